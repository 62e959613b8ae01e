namespace Lighting.Calc.Cli.Rendering;

/// <summary>Bars against marks, all on one scale from zero. Text shows them as characters.</summary>
/// <param name="Title">What is shown.</param>
/// <param name="Marks">What each bar's marks mean, in their order.</param>
/// <param name="Bars">The bars.</param>
internal sealed record BarChart(string Title, IReadOnlyList<string> Marks, IReadOnlyList<Bar> Bars) : Block;

/// <summary>One bar.</summary>
/// <param name="Label">What it is of.</param>
/// <param name="Value">Its length, zero or more.</param>
/// <param name="Text">The value and its marks in words.</param>
/// <param name="Marks">Where its marks stand, zero or more; null where one is not known.</param>
internal sealed record Bar(string Label, double Value, string Text, IReadOnlyList<double?> Marks)
{
    /// <summary>Beyond which a page hatches it; null where there is no limit.</summary>
    public double? Limit { get; init; }
}
