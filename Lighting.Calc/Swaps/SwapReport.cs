using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A bike before and after a swap of lamps.</summary>
public sealed record SwapReport
{
    /// <summary>The swap.</summary>
    public required ImmutableArray<LampReplacement> Replacements { get; init; }

    /// <summary>The whole verdict before.</summary>
    public required BikeReport Before { get; init; }

    /// <summary>The whole verdict after.</summary>
    public required BikeReport After { get; init; }

    /// <summary>Every lamp and other load, in the order of the list.</summary>
    public required ImmutableArray<LampChange> Lamps { get; init; }

    /// <summary>The circuits, in the order of the list.</summary>
    public required ImmutableArray<CircuitChange> Circuits { get; init; }

    /// <summary>The fuses, in the order of the list.</summary>
    public required ImmutableArray<FuseChange> Fuses { get; init; }

    /// <summary>The ledger of the lamp that loses most before; null where no drop is known.</summary>
    public required VoltageDropBreakdown? WorstDropBefore { get; init; }

    /// <summary>The ledger of the lamp that loses most after; null where no drop is known.</summary>
    public required VoltageDropBreakdown? WorstDropAfter { get; init; }

    /// <summary>The balance in the settings of the ride and in the heaviest; empty without a charging curve.</summary>
    public required ImmutableArray<ChargingChange> Charging { get; init; }

    /// <summary>The ride before; null without a charging curve or a ride.</summary>
    public required RideBalance? RideBefore { get; init; }

    /// <summary>The ride after; null without a charging curve or a ride.</summary>
    public required RideBalance? RideAfter { get; init; }

    /// <summary>Where most amps are over after; null where none are, or it is not known.</summary>
    public required ExcessCurrentChange? Excess { get; init; }

    /// <summary>Standing times to half and to no start; empty without a battery capacity.</summary>
    public required ImmutableArray<BatteryRunTimeChange> Standing { get; init; }

    /// <summary>The flasher's load in each setting with other lamps of the flashing circuits lit.</summary>
    public required ImmutableArray<FlasherChange> Flashers { get; init; }

    /// <summary>The load resistors that would give a thermal flasher its load back; empty where it keeps enough.</summary>
    public required ImmutableArray<LampResistor> Resistors { get; init; }

    /// <summary>The lamps that are fed when they should be dark, since the swap.</summary>
    public required ImmutableArray<SneakFeed> SneakFeeds { get; init; }

    /// <summary>What the swap itself gives rise to, then what stands against the swapped bike; worst first.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>The verdict on the swapped bike.</summary>
    public BikeVerdict Verdict => Findings.Any(f => f.Severity == Severity.Fault) ? BikeVerdict.DoesNotSuit : After.Verdict;

    /// <summary>The verdict in words: <c>suits</c>, <c>does not suit</c> or <c>not judged</c>.</summary>
    public string VerdictText => BikeReport.TextOf(Verdict);
}
