using UnitsNet;

namespace Lighting.Calc;

/// <summary>The size chosen for one run, with what it rests on.</summary>
public sealed record RunSizing
{
    internal RunSizing() { }

    /// <summary>The run as fitted.</summary>
    public Run Run { get; internal init; } = null!;

    /// <summary>The size chosen.</summary>
    public WireSize Chosen { get; internal init; } = null!;

    /// <summary>What keeps it from being one size thinner.</summary>
    internal SizingConstraint Limit { get; init; }

    /// <summary>The lamp whose drop limits it; null with any other limit, or where thinner has no operating
    /// point.</summary>
    public FittedLamp? LimitingLamp { get; internal init; }

    /// <summary>The same in words, with the numbers of the next thinner size.</summary>
    public string Explanation { get; internal init; } = null!;

    /// <summary>Largest current in any setting, without sign, in the harness as chosen.</summary>
    public ElectricCurrent WorstCurrent { get; internal init; }

    /// <summary>Voltage lost in wire and joints at that current.</summary>
    public ElectricPotential Drop { get; internal init; }

    /// <summary>Current rating of the chosen size.</summary>
    public CurrentRating Rating { get; internal init; } = null!;

    /// <summary>The fuse of the largest rating that feeds it or whose lamps return by it; null where there is
    /// none.</summary>
    public Fuse? Fuse { get; internal init; }
}
