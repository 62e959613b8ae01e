namespace Lighting.Calc.Cli.Rendering;

/// <summary>One stacked bar.</summary>
/// <param name="Label">What it is of.</param>
/// <param name="Text">Its sum in words.</param>
/// <param name="Segments">The length of each kind's segment; one below zero is not drawn.</param>
/// <param name="SegmentTexts">The same in words.</param>
internal sealed record StackedBar(string Label, string Text, IReadOnlyList<double> Segments, IReadOnlyList<string> SegmentTexts);
