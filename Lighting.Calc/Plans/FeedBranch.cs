using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A part of the feed side that one fuse can be put before: everything behind one point.</summary>
/// <param name="Source">The point that its fuse is fed from.</param>
/// <param name="Heads">The parts that move from there to the fuse.</param>
/// <param name="Points">The points behind it.</param>
/// <param name="Lamps">Indices of the lamps that it feeds.</param>
internal sealed record FeedBranch(
    int Source,
    ImmutableArray<HarnessPart> Heads,
    ImmutableHashSet<int> Points,
    ImmutableArray<int> Lamps
);
