using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Circuits dealt to the fuses of a fuse box.</summary>
public sealed class FusePlan
{
    internal FusePlan() { }

    /// <summary>The fuses, the main fuse first where there is one, then the ways of the box; empty where no plan was
    /// found.</summary>
    public ImmutableArray<FuseWay> Ways { get; internal init; } = [];

    /// <summary>Whether a plan was found.</summary>
    public bool IsFeasible => !Ways.IsEmpty;

    /// <summary>Fuses of the bike that the plan takes out: their circuits are fused by its ways.</summary>
    public ImmutableArray<Fuse> RemovedFuses { get; internal init; } = [];

    /// <summary>What the plan does not keep, and what it assumes: limits of drop that no listed wire keeps, the kind of
    /// cable.</summary>
    public ImmutableArray<Finding> Findings { get; internal init; } = [];

    /// <summary>The points that boxes are fed from; a fuse alone at its point is in line there, without a
    /// box.</summary>
    public ImmutableArray<string> TappingPoints { get; internal init; } = [];

    /// <summary>The wires to add.</summary>
    public ImmutableArray<Run> NewRuns { get; internal init; } = [];

    /// <summary>The wires of the bike whose size changes, as they become.</summary>
    public ImmutableArray<Run> ResizedRuns { get; internal init; } = [];

    /// <summary>Every end of the bike's wires, contacts, loads and remaining fuses that is at another point with the
    /// plan: at a way, or where a fuse was taken out.</summary>
    public ImmutableArray<MovedEnd> MovedEnds { get; internal init; } = [];

    /// <summary>The bike with the plan; null where no plan was found, or the bike has no runs, so that a box cannot be
    /// put into it.</summary>
    public Bike? Planned { get; internal init; }

    /// <summary>The outcome in words; where no plan was found, why.</summary>
    public string Explanation { get; internal init; } = "";
}
