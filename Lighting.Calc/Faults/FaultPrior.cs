namespace Lighting.Calc;

/// <summary>How often a fault is met before anything is measured, against the others: a row of <c>tables/fault-priors.csv</c>.</summary>
/// <param name="Fault">The row's name, such as <c>ground joint poor</c>.</param>
/// <param name="Weight">Weight against the other rows, above zero, for each part (a joint, a contact, a lamp).</param>
/// <param name="Source">Where the weight comes from.</param>
public sealed record FaultPrior(string Fault, double Weight, string Source);
