namespace Lighting.Calc.Cli.Rendering;

/// <summary>A block that only a page in a browser gives: text and CSV leave it out.</summary>
internal sealed record PageOnly(Block Block) : Block;
