namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>A circuit laid out: strokes, symbols, dots and labels, each where it stands.</summary>
/// <param name="Width">Width of the whole, in the unit of <see cref="LabelText.Size"/>.</param>
/// <param name="Height">Height of the whole.</param>
/// <param name="Lines">Strokes; live ones lie over others.</param>
/// <param name="Symbols">Symbols.</param>
/// <param name="Dots">Points and junctions.</param>
/// <param name="Labels">Labels.</param>
internal sealed record CircuitDrawing(
    double Width,
    double Height,
    IReadOnlyList<DrawnLine> Lines,
    IReadOnlyList<DrawnSymbol> Symbols,
    IReadOnlyList<DrawnDot> Dots,
    IReadOnlyList<DrawnLabel> Labels
)
{
    /// <summary>Where it may be cut upright: only level conductors cross there.</summary>
    public IReadOnlyList<double> Columns { get; init; } = [];

    /// <summary>Where it may be cut level: only upright conductors cross there.</summary>
    public IReadOnlyList<double> Bands { get; init; } = [];

    /// <summary>Where conductors go on on another sheet.</summary>
    public IReadOnlyList<DrawnMark> Marks { get; init; } = [];

    /// <summary>Height of what is drawn: sheets of one circuit have one size, and one may hold little.</summary>
    public double DrawnHeight =>
        Math.Min(
            Height,
            Lines
                .SelectMany(l => new[] { l.Y1, l.Y2 })
                .Concat(Labels.Select(l => l.Bounds.Bottom))
                .Append(0)
                .Max() + Foot
        );

    private const double Foot = 20;

    /// <summary>Whether its letters are large enough to read on a printed sheet.</summary>
    public bool IsLegible => Scale >= PrintedSheet.LeastScale;

    /// <summary>Whether it stands larger on an upright sheet than on one on its side.</summary>
    public bool IsUpright => UprightScale > SideScale;

    /// <summary>Millimetres of a printed sheet for one unit of the drawing.</summary>
    public double Scale => Math.Max(UprightScale, SideScale);

    private double SideScale => PrintedSheet.OnItsSide.Scale(Width, Height);

    private double UprightScale => PrintedSheet.Upright.Scale(Width, Height);
}
