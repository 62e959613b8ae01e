namespace Lighting.Calc.Cli.Rendering;

/// <summary>Labels to cut out, on a page only.</summary>
/// <param name="Labels">The mark of each, and what stands below it.</param>
internal sealed record LabelSheet(IReadOnlyList<(string Mark, string Text)> Labels) : Block;
