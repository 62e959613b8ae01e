using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Charge gained and lost over a ride.</summary>
/// <remarks>
/// Charge counting: amps times time, times the charge efficiency when they go in. Peukert's law is not applied
/// while riding. The charging system sends its whole surplus until the battery is full.
/// </remarks>
public sealed record RideBalance
{
    /// <summary>The stretches, in order.</summary>
    public required ImmutableArray<RideStretchBalance> Stretches { get; init; }

    /// <summary>State of charge at the start.</summary>
    public required Ratio InitialStateOfCharge { get; init; }

    /// <summary>How long the ride takes.</summary>
    public required Duration Duration { get; init; }

    /// <summary>Sum of the stretches' charges, as if the battery had no ends; null when one is not known.</summary>
    public required ElectricCharge? NetCharge { get; init; }

    /// <summary>State of charge at the end; null when not known.</summary>
    public Ratio? FinalStateOfCharge => Stretches.IsEmpty ? InitialStateOfCharge : Stretches[^1].StateOfCharge;
}
