namespace Lighting.Calc.Cli.Rendering.Diagram;

/// <summary>A circuit laid out: strokes, symbols, dots and labels, each where it stands.</summary>
/// <param name="Width">Width of the whole, in the unit of <see cref="LabelText.Size"/>.</param>
/// <param name="Height">Height of the whole.</param>
/// <param name="Lines">Strokes; live ones lie over others.</param>
/// <param name="Symbols">Symbols.</param>
/// <param name="Dots">Points and junctions.</param>
/// <param name="Labels">Labels.</param>
/// <param name="NotDrawn">Names of parts whose two ends are one point, which a drawing cannot show.</param>
internal sealed record CircuitDrawing(
    double Width, double Height, IReadOnlyList<DrawnLine> Lines, IReadOnlyList<DrawnSymbol> Symbols, IReadOnlyList<DrawnDot> Dots, IReadOnlyList<DrawnLabel> Labels, IReadOnlyList<string> NotDrawn);
