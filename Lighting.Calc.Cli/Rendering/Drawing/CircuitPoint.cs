namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>A point of the drawing.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Figures">Its voltage.</param>
internal sealed record CircuitPoint(string Name, string Figures);
