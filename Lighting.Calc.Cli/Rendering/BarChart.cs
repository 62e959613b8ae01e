namespace Lighting.Calc.Cli.Rendering;

/// <summary>Bars against marks, all on one scale from zero. Text shows them as characters.</summary>
/// <param name="Title">What is shown.</param>
/// <param name="Marks">What each bar's marks mean, in their order.</param>
/// <param name="Bars">The bars.</param>
internal sealed record BarChart(string Title, IReadOnlyList<string> Marks, IReadOnlyList<Bar> Bars) : Block;
