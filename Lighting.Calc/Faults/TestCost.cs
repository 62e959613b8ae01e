namespace Lighting.Calc;

/// <summary>Cost of a test in the mechanic's time: a row of <c>tables/test-costs.csv</c>.</summary>
/// <param name="Test">An instrument word of <c>readings.csv</c>, or <c>other setting</c>.</param>
/// <param name="Cost">Cost against one probing with the meter, above zero.</param>
/// <param name="Source">Source of the figure.</param>
internal sealed record TestCost(string Test, double Cost, string Source);
