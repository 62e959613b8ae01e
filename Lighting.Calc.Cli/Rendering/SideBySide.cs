namespace Lighting.Calc.Cli.Rendering;

/// <summary>Blocks that stand beside each other where a page has room, and under each other where it has not.</summary>
internal sealed record SideBySide(IReadOnlyList<Block> Blocks) : Block;
