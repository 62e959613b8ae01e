using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Results of the tolerance analysis of a bike.</summary>
public sealed class ToleranceReport
{
    internal ToleranceReport(Bike bike) => Bike = bike;

    /// <summary>The bike as listed.</summary>
    public Bike Bike { get; }

    /// <summary>Number of samples.</summary>
    public int Samples { get; internal init; }

    /// <summary>Seed.</summary>
    public long Seed { get; internal init; }

    /// <summary>Number of electrically different settings solved for each.</summary>
    public int States { get; internal init; }

    /// <summary>The parts that have a spread.</summary>
    internal ImmutableArray<TolerancePart> Parts { get; init; }

    /// <summary>The lamps and other loads that are lit in some setting, in the order of the list.</summary>
    public ImmutableArray<LampTolerance> Lamps { get; internal init; }

    /// <summary>The fuses, in the order of the list.</summary>
    public ImmutableArray<FuseTolerance> Fuses { get; internal init; }

    /// <summary>
    /// The engine speed from which the load is covered, each bike in its worst setting; null without a charging curve.
    /// A bike whose load is covered nowhere on the curve has no such speed and counts above all others; one whose load
    /// is covered below the curve's first point counts with that point.
    /// </summary>
    public ResultSpread<RotationalSpeed>? BreakEven { get; internal init; }

    /// <summary>Charge gained over the ride, or lost; null without a ride or where an output on it is
    /// unknown.</summary>
    public ResultSpread<ElectricCharge>? RideBalance { get; internal init; }

    /// <summary>Verdicts, the least certain first.</summary>
    internal ImmutableArray<VerdictTolerance> Verdicts { get; init; }
}
