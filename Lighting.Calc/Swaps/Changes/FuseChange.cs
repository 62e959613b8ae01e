
namespace Lighting.Calc;

/// <summary>One fuse before and after.</summary>
/// <param name="Before">Its suitability before.</param>
/// <param name="After">Its suitability after; its advice is never above what the wire carries.</param>
public sealed record FuseChange(FuseSuitability Before, FuseSuitability After);
