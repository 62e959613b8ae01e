namespace Lighting.Calc.Cli.Rendering.Diagram;

/// <summary>A circuit laid out: strokes, symbols, dots and labels, each where it stands.</summary>
/// <param name="Width">Width of the whole, in the unit of <see cref="LabelText.Size"/>.</param>
/// <param name="Height">Height of the whole.</param>
/// <param name="Lines">Strokes; live ones lie over others.</param>
/// <param name="Symbols">Symbols.</param>
/// <param name="Dots">Points and junctions.</param>
/// <param name="Labels">Labels.</param>
internal sealed record CircuitDrawing(
    double Width, double Height, IReadOnlyList<DrawnLine> Lines, IReadOnlyList<DrawnSymbol> Symbols, IReadOnlyList<DrawnDot> Dots, IReadOnlyList<DrawnLabel> Labels)
{
    // What A4 and Letter both hold, less margins and caption, in millimetres.
    private const double LongSide = 258;
    private const double ShortSide = 184;
    private const double CaptionOnItsSide = 24;
    private const double CaptionUpright = 32;

    /// <summary>Whether it stands larger on an upright sheet than on one on its side.</summary>
    public bool IsUpright => UprightScale > SideScale;

    /// <summary>Millimetres of a printed sheet for one unit of the drawing.</summary>
    public double Scale => Math.Max(UprightScale, SideScale);

    private double SideScale => Math.Min(LongSide / Width, (ShortSide - CaptionOnItsSide) / Height);

    private double UprightScale => Math.Min(ShortSide / Width, (LongSide - CaptionUpright) / Height);
}
