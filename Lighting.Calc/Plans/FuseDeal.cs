using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Branches in groups, one for each fuse.</summary>
/// <param name="Groups">Indices of the branches of each group.</param>
/// <param name="Ratings">Rating of each group's fuse in amperes.</param>
/// <param name="TooSmallWires">Number of groups with a wire rated below the fuse.</param>
internal sealed record FuseDeal(
    ImmutableArray<ImmutableArray<int>> Groups,
    ImmutableArray<double> Ratings,
    int TooSmallWires
);
