namespace Lighting.Calc.FaultFinding;

/// <summary>What a test costs the mechanic: a row of <c>tables/test-efforts.csv</c>.</summary>
/// <param name="Test">An instrument word of <c>readings.csv</c>, or <c>other setting</c>.</param>
/// <param name="Effort">Effort against one probing with the meter, above zero.</param>
/// <param name="Source">Where the figure comes from.</param>
public sealed record TestEffort(string Test, double Effort, string Source);
