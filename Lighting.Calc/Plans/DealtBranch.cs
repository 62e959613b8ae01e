using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>One branch to be dealt: what it draws and what may be with it.</summary>
/// <param name="Source">Branches of one source may share a fuse.</param>
/// <param name="Continuous">Current in each setting without momentary loads.</param>
/// <param name="Peak">Current in each setting.</param>
/// <param name="WireAmperes">The least rating of its wires; infinite where none limits it.</param>
/// <param name="Kinds">What it feeds of the loads that are kept apart.</param>
internal sealed record DealtBranch(
    int Source,
    ImmutableArray<double> Continuous,
    ImmutableArray<double> Peak,
    double WireAmperes,
    ApartLoads Kinds
);
