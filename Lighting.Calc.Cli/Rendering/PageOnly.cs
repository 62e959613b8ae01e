namespace Lighting.Calc.Cli.Rendering;

/// <summary>What only a page in a browser gives; text and CSV leave it out, and it is not made for them.</summary>
/// <param name="Blocks">Makes its blocks; null where there is nothing to show.</param>
internal sealed record PageOnly(Func<IEnumerable<Block?>> Blocks) : Block
{
    /// <summary>A document's blocks as a page has them.</summary>
    public static IEnumerable<Block> Shown(IEnumerable<Block> blocks) => blocks.SelectMany(b => b is PageOnly only ? only.Blocks().OfType<Block>() : [b]);
}
