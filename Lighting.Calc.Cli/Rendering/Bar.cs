namespace Lighting.Calc.Cli.Rendering;

/// <summary>One bar.</summary>
/// <param name="Label">What it is of.</param>
/// <param name="Value">Its length, zero or more.</param>
/// <param name="Text">The value and its marks in words.</param>
/// <param name="Marks">Where its marks stand, zero or more; null where one is not known.</param>
internal sealed record Bar(string Label, double Value, string Text, IReadOnlyList<double?> Marks);
