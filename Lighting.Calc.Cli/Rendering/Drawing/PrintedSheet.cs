namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>The room for a drawing that A4 and Letter both have, less margins and caption.</summary>
/// <param name="Width">In millimetres.</param>
/// <param name="Height">In millimetres.</param>
internal readonly record struct PrintedSheet(double Width, double Height)
{
    public static readonly PrintedSheet OnItsSide = new(262, 170);

    public static readonly PrintedSheet Upright = new(192, 238);

    // Print of seven and a half points is read at arm's length, in a workshop.
    private const double LeastLetter = 7.5 * 25.4 / 72;

    /// <summary>The fewest millimetres that one unit of a legible drawing may have.</summary>
    public const double LeastScale = LeastLetter / LabelText.Size;

    /// <summary>Millimetres for one unit of a drawing that fills it.</summary>
    public double Scale(double width, double height) => Math.Min(Width / width, Height / height);

    /// <summary>Whether the letters of a drawing on it are large enough to read.</summary>
    public bool IsLegible(CircuitDrawing drawing) => Scale(drawing.Width, drawing.Height) >= LeastScale;
}
