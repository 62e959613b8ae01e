using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Charge gained and lost over a ride.</summary>
/// <remarks>
/// Charge counting: amps times time, times the charge efficiency when they go in. Peukert's law is not applied
/// while riding. The charging system sends its whole surplus until the battery is full.
/// </remarks>
public sealed class RideBalance
{
    internal RideBalance() { }

    /// <summary>The stretches, in order.</summary>
    public ImmutableArray<RideStretchBalance> Stretches { get; internal init; }

    /// <summary>State of charge at the start.</summary>
    public Ratio InitialStateOfCharge { get; internal init; }

    /// <summary>How long the ride takes.</summary>
    public Duration Duration { get; internal init; }

    /// <summary>Sum of the stretches' charges, as if the battery had no ends; null when one is not known.</summary>
    public ElectricCharge? NetCharge { get; internal init; }

    /// <summary>State of charge at the end; null when not known.</summary>
    public Ratio? FinalStateOfCharge => Stretches.IsEmpty ? InitialStateOfCharge : Stretches[^1].StateOfCharge;
}
