using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A lamp fed through a relay near the battery, with a fuse of its own, and what it gains.</summary>
public sealed class RelayPlan
{
    internal RelayPlan() { }

    /// <summary>The lamp, as it is fitted.</summary>
    public FittedLamp Lamp { get; internal init; } = null!;

    /// <summary>The setting that both voltages are of: the one in which the lamp has the largest drop now; null where
    /// no plan was found.</summary>
    public Setting? Setting { get; internal init; }

    /// <summary>Voltage at the lamp now.</summary>
    public ElectricPotential VoltageNow { get; internal init; }

    /// <summary>Voltage at the lamp with the relay.</summary>
    public ElectricPotential VoltageThen { get; internal init; }

    /// <summary>Light now against the published light; null for a load that gives none, or whose light is not
    /// published.</summary>
    public Ratio? LightNow { get; internal init; }

    /// <summary>The same with the relay.</summary>
    public Ratio? LightThen { get; internal init; }

    /// <summary>The relay; null where no plan was found.</summary>
    public Relay? Relay { get; internal init; }

    /// <summary>Its fuse, at the battery; null where no plan was found.</summary>
    public Fuse? Fuse { get; internal init; }

    /// <summary>The wires to add.</summary>
    public ImmutableArray<Run> NewRuns { get; internal init; } = [];

    /// <summary>The point that the lamp was fed from: the wire there moves to the coil.</summary>
    public string FormerFeed { get; internal init; } = "";

    /// <summary>The bike with the relay; null where no plan was found.</summary>
    public Bike? Planned { get; internal init; }

    /// <summary>Whether a plan was found.</summary>
    public bool IsFeasible => Planned is not null;

    /// <summary>Where no plan was found, why; else empty.</summary>
    public string Explanation { get; internal init; } = "";
}
