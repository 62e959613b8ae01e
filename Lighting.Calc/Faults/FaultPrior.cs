namespace Lighting.Calc;

/// <summary>Prior weight of a fault relative to the others: a row of <c>tables/fault-priors.csv</c>.</summary>
/// <param name="Fault">The row's name, such as <c>high-resistance earth</c>.</param>
/// <param name="Weight">Weight against the other rows, above zero, for each part (a joint, a contact, a lamp).</param>
/// <param name="Source">Source of the weight.</param>
public sealed record FaultPrior(string Fault, double Weight, string Source);
