using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The load of a fuse: the continuous load against its share of the rating, and the peak against the
/// rating.</summary>
/// <remarks>
/// Usable = rating × continuous load factor × temperature factor; peak limit = rating × temperature factor. Currents
/// are those while on: a duty never counts, and a lamp that flashes counts with its rms current. Above its limit the
/// peak is held against the shortest published opening time at the
/// next higher published current: from one hour on the fuse is taken to hold it.
/// </remarks>
public sealed class ContinuousLoad
{
    internal ContinuousLoad() { }

    internal const double HeldSeconds = 3600;

    /// <summary>Largest current over the settings in which no momentary contact is closed; of all, where a condition
    /// holds one closed in each.</summary>
    public ElectricCurrent ContinuousCurrent { get; internal init; }

    /// <summary>The setting it flows in.</summary>
    public Setting ContinuousSetting { get; internal init; } = null!;

    /// <summary>Current the fuse may carry continuously.</summary>
    public ElectricCurrent UsableCurrent { get; internal init; }

    /// <summary>Largest current in any setting, momentary loads included: the peak.</summary>
    public ElectricCurrent WorstCurrent { get; internal init; }

    /// <summary>The setting it flows in.</summary>
    public Setting WorstSetting { get; internal init; } = null!;

    /// <summary>The engine speed at which it flows; null with the engine off, and where no output is known.</summary>
    public RotationalSpeed? WorstSpeed { get; internal init; }

    /// <summary>The rating at the ambient temperature, against which the peak is held.</summary>
    public ElectricCurrent PeakLimit { get; internal init; }

    /// <summary>Where the peak exceeds its limit: the shortest published opening time at the next higher published
    /// current; null where it does not, or where none is published.</summary>
    public Duration? PeakHeldFor { get; internal init; }

    /// <summary>Names of the loads that were taken as momentary.</summary>
    public ImmutableArray<string> MomentaryLoads { get; internal init; }

    /// <summary>Usable less continuous current; negative when overloaded.</summary>
    public ElectricCurrent Headroom => UsableCurrent - ContinuousCurrent;

    /// <summary>Whether the peak exceeds its limit.</summary>
    public bool PeakExceedsRating => WorstCurrent.Amperes > PeakLimit.Amperes + 1e-9;

    /// <summary>Whether the fuse carries the peak.</summary>
    public bool HoldsPeak => !PeakExceedsRating || PeakHeldFor is { Seconds: >= HeldSeconds };

    /// <summary>Whether the fuse carries both.</summary>
    public bool Suits => Headroom.Amperes >= -1e-9 && HoldsPeak;
}
