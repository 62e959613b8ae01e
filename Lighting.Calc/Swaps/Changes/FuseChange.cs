namespace Lighting.Calc;

/// <summary>One fuse before and after.</summary>
public sealed record FuseChange
{
    internal FuseChange(FuseSuitability before, FuseSuitability after) => (Before, After) = (before, after);

    /// <summary>Its suitability before.</summary>
    public FuseSuitability Before { get; }

    /// <summary>Its suitability after; its advice is never above what the wire carries.</summary>
    public FuseSuitability After { get; }
}
