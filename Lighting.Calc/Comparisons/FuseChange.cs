namespace Lighting.Calc;

/// <summary>One fuse before and after.</summary>
public sealed record FuseChange
{
    internal FuseChange(FuseSuitability? before, FuseSuitability? after) => (Before, After) = (before, after);

    /// <summary>The fuse after, or before where there is none of this name after.</summary>
    public Fuse Fuse => (After ?? Before)!.Fuse;

    /// <summary>Its suitability before; null where there was none of this name.</summary>
    public FuseSuitability? Before { get; }

    /// <summary>Its suitability after; null where there is none of this name. Its advice is never above what the wire
    /// is rated for.</summary>
    public FuseSuitability? After { get; }
}
