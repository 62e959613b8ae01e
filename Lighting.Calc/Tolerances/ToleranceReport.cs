using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>How sure the answers about a bike are.</summary>
public sealed record ToleranceReport
{
    /// <summary>The bike as listed.</summary>
    public required Bike Bike { get; init; }

    /// <summary>How many bikes were drawn.</summary>
    public required int Samples { get; init; }

    /// <summary>Which ones: the seed.</summary>
    public required long Seed { get; init; }

    /// <summary>How many electrically different settings were solved for each.</summary>
    public required int States { get; init; }

    /// <summary>The parts that have a spread.</summary>
    public required ImmutableArray<TolerancePart> Parts { get; init; }

    /// <summary>The lamps and other loads that are lit in some setting, in the order of the list.</summary>
    public required ImmutableArray<LampTolerance> Lamps { get; init; }

    /// <summary>The fuses, in the order of the list.</summary>
    public required ImmutableArray<FuseTolerance> Fuses { get; init; }

    /// <summary>
    /// The engine speed from which the load is covered, each bike in its worst setting; null without a charging curve. A bike whose
    /// load is covered nowhere on the curve has no such speed and counts above all others; one whose load is covered below the curve's first point counts with that point.
    /// </summary>
    public required ResultSpread<RotationalSpeed>? BreakEven { get; init; }

    /// <summary>Charge gained over the ride, or lost; null without a ride or where an output on it is not known.</summary>
    public required ResultSpread<ElectricCharge>? RideBalance { get; init; }

    /// <summary>The verdicts, the least sure first.</summary>
    public required ImmutableArray<VerdictTolerance> Verdicts { get; init; }
}
