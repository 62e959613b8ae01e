using UnitsNet;

namespace Lighting.Calc;

/// <summary>The size chosen for one run, with what it rests on.</summary>
public sealed record RunSizing
{
    /// <summary>The run as fitted.</summary>
    public required Run Run { get; init; }

    /// <summary>The size chosen.</summary>
    public required WireSize Chosen { get; init; }

    /// <summary>What keeps it from being one size thinner.</summary>
    public required SizingConstraint Limit { get; init; }

    /// <summary>The lamp whose drop limits it; null with any other limit, or where thinner has no operating
    /// point.</summary>
    public required FittedLamp? LimitingLamp { get; init; }

    /// <summary>The same in words, with the numbers of the next thinner size.</summary>
    public required string Explanation { get; init; }

    /// <summary>Largest current in any setting, without sign, in the harness as chosen.</summary>
    public required ElectricCurrent WorstCurrent { get; init; }

    /// <summary>The setting it flows in.</summary>
    public required Setting WorstSetting { get; init; }

    /// <summary>Voltage lost in wire and joints at that current.</summary>
    public required ElectricPotential Drop { get; init; }

    /// <summary>Current rating of the chosen size.</summary>
    public required CurrentRating Rating { get; init; }

    /// <summary>The fuse of the largest rating that feeds it or whose lamps return by it; null where there is
    /// none.</summary>
    public required Fuse? Fuse { get; init; }
}
