namespace Lighting.Calc.Cli.Rendering;

/// <summary>Bars made of the same kinds of segment, all on one scale from zero.</summary>
/// <param name="Title">What is shown.</param>
/// <param name="Kinds">The kinds of segment, in the order they are stacked.</param>
/// <param name="Bars">The bars.</param>
/// <param name="Mark">Where a mark stands over all bars.</param>
/// <param name="MarkText">What the mark means.</param>
internal sealed record StackedBarChart(
    string Title,
    IReadOnlyList<string> Kinds,
    IReadOnlyList<StackedBar> Bars,
    double Mark,
    string MarkText
) : Block;

/// <summary>One stacked bar.</summary>
/// <param name="Label">What it is of.</param>
/// <param name="Text">Its sum in words.</param>
/// <param name="Segments">The length of each kind's segment; one below zero is not drawn.</param>
/// <param name="SegmentTexts">The same in words.</param>
internal sealed record StackedBar(
    string Label,
    string Text,
    IReadOnlyList<double> Segments,
    IReadOnlyList<string> SegmentTexts
);
