
namespace Lighting.Calc;

/// <summary>A dead short that its fuse is not shown to clear in time.</summary>
/// <param name="Clearing">The short.</param>
/// <param name="Fuse">The fuse.</param>
/// <param name="LongestSeconds">The longest it may last.</param>
internal sealed record UnclearedShort(ShortCircuitCheck Clearing, Fuse Fuse, double LongestSeconds);
