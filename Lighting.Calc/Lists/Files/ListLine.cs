namespace Lighting.Calc;

/// <summary>One line of a list, split into cells.</summary>
internal sealed record ListLine(int Number, string[] Cells);
