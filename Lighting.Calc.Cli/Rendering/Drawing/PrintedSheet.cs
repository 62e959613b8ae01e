namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>The room for a drawing that A4 and Letter both have, less margins and caption.</summary>
/// <param name="Width">In millimetres.</param>
/// <param name="Height">In millimetres.</param>
internal readonly record struct PrintedSheet(double Width, double Height)
{
    public static readonly PrintedSheet OnItsSide = new(258, 160);

    public static readonly PrintedSheet Upright = new(184, 226);

    // Print of six points is the smallest that is read without effort.
    private const double LeastLetter = 6 * 25.4 / 72;

    /// <summary>The fewest millimetres that one unit of a legible drawing may have.</summary>
    public const double LeastScale = LeastLetter / LabelText.Size;

    /// <summary>Millimetres for one unit of a drawing that fills it.</summary>
    public double Scale(double width, double height) => Math.Min(Width / width, Height / height);
}
