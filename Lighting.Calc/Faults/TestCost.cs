namespace Lighting.Calc;

/// <summary>What a test costs the mechanic: a row of <c>tables/test-efforts.csv</c>.</summary>
/// <param name="Test">An instrument word of <c>readings.csv</c>, or <c>other setting</c>.</param>
/// <param name="Cost">Cost against one probing with the meter, above zero.</param>
/// <param name="Source">Source of the figure.</param>
public sealed record TestCost(string Test, double Cost, string Source);
