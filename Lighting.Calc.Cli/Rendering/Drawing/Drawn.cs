namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>A stroke of a conductor, level or upright.</summary>
/// <param name="X1">Left or upper end.</param>
/// <param name="Y1">Left or upper end.</param>
/// <param name="X2">Right or lower end.</param>
/// <param name="Y2">Right or lower end.</param>
/// <param name="IsLive">Whether current flows in it.</param>
/// <param name="Part">The number of the part it is; null for what only leads from a point to its parts.</param>
internal sealed record DrawnLine(double X1, double Y1, double X2, double Y2, bool IsLive, int? Part = null);

/// <summary>A symbol, its middle on a level conductor.</summary>
/// <param name="Kind">Which.</param>
/// <param name="X">Its middle.</param>
/// <param name="Y">The line it stands on.</param>
/// <param name="IsLive">Whether current flows in it.</param>
internal sealed record DrawnSymbol(SymbolKind Kind, double X, double Y, bool IsLive);

/// <summary>A point of the lists, or a junction of conductors.</summary>
/// <param name="X">Across.</param>
/// <param name="Y">Down.</param>
/// <param name="IsJunction">Whether it only joins conductors.</param>
/// <param name="IsLive">Whether current flows there.</param>
internal sealed record DrawnDot(double X, double Y, bool IsJunction, bool IsLive);

/// <summary>A label of several lines.</summary>
/// <param name="X">Where the lines are anchored.</param>
/// <param name="Top">Top of the first line.</param>
/// <param name="Anchor">Which way they are set from there.</param>
/// <param name="Lines">The lines.</param>
/// <param name="HasFigures">Whether the last line holds figures, which are set bold.</param>
/// <param name="IsLive">Whether what it names carries current.</param>
/// <param name="Bounds">The room it takes, by an estimate of its letters' widths.</param>
internal sealed record DrawnLabel(
    double X,
    double Top,
    LabelAnchor Anchor,
    IReadOnlyList<string> Lines,
    bool HasFigures,
    bool IsLive,
    Box Bounds
);

/// <summary>Where a conductor leaves a sheet.</summary>
/// <param name="Text">Its letter, and the sheet where it goes on at the same letter.</param>
/// <param name="Bounds">The box about the text, at which the conductor ends.</param>
/// <param name="IsLive">Whether current flows there.</param>
internal sealed record DrawnMark(string Text, Box Bounds, bool IsLive);

/// <summary>Which way a label is set from its anchor.</summary>
internal enum LabelAnchor
{
    /// <summary>To the right.</summary>
    Start,

    /// <summary>To both sides.</summary>
    Middle,

    /// <summary>To the left.</summary>
    End,
}

/// <summary>A rectangle, down being positive.</summary>
internal readonly record struct Box(double Left, double Top, double Right, double Bottom)
{
    public bool Overlaps(Box other) =>
        Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;
}
