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

    /// <summary>The points that the box is fed from.</summary>
    public ImmutableArray<string> TappingPoints { get; internal init; } = [];

    /// <summary>The wires to add.</summary>
    public ImmutableArray<Run> NewRuns { get; internal init; } = [];

    /// <summary>The wires of the bike whose size changes, as they become.</summary>
    public ImmutableArray<Run> ResizedRuns { get; internal init; } = [];

    /// <summary>The wires, contacts and loads of the bike that move from a tapping point to a way: each with the point
    /// it is connected to then.</summary>
    public ImmutableArray<MovedEnd> MovedEnds { get; internal init; } = [];

    /// <summary>The bike with the plan; null where no plan was found, or the bike has no runs, so that a box cannot be
    /// put into it.</summary>
    public Bike? Planned { get; internal init; }

    /// <summary>The outcome in words; where no plan was found, why.</summary>
    public string Explanation { get; internal init; } = "";
}
