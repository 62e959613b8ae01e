namespace Lighting.Calc.Cli.Rendering;

/// <summary>One line of a chart.</summary>
/// <param name="Label">Its name in the legend.</param>
/// <param name="Points">Its points, from left to right.</param>
internal sealed record ChartLine(string Label, IReadOnlyList<ChartPoint> Points);

/// <summary>One point of a chart's line.</summary>
/// <param name="X">Along the axis from left to right.</param>
/// <param name="Y">Along the axis from bottom to top; null where it is not known, and the line breaks.</param>
internal readonly record struct ChartPoint(double X, double? Y);

/// <summary>A point that is marked and named.</summary>
/// <param name="X">Along the axis from left to right.</param>
/// <param name="Y">Along the axis from bottom to top.</param>
/// <param name="Text">Its name; empty for a mark alone.</param>
internal sealed record ChartMark(double X, double Y, string Text);
