namespace Lighting.Calc.Cli.Rendering;

/// <summary>Lines over a common axis.</summary>
/// <param name="Title">What is shown.</param>
/// <param name="Description">The same in words, for those who do not see it.</param>
/// <param name="XTitle">The axis from left to right, with its unit.</param>
/// <param name="YTitle">The axis from bottom to top, with its unit.</param>
/// <param name="Lines">The lines; at least one has points.</param>
/// <param name="Marks">Points that are marked and named.</param>
/// <param name="Bottom">A value that the upright axis reaches down to in any case.</param>
/// <param name="Top">A value that it reaches up to in any case.</param>
internal sealed record LineChart(
    string Title,
    string Description,
    string XTitle,
    string YTitle,
    IReadOnlyList<ChartLine> Lines,
    IReadOnlyList<ChartMark> Marks,
    double Bottom,
    double Top
) : Block
{
    /// <summary>A second chart beside or under it, over the same axis from left to right.</summary>
    public LineChart? Below { get; init; }
}

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
