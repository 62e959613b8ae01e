using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A bike before and after a swap of lamps.</summary>
public sealed class SwapReport
{
    internal SwapReport() { }

    /// <summary>The swap.</summary>
    public ImmutableArray<LampReplacement> Replacements { get; internal init; }

    /// <summary>The bike beside the swapped one.</summary>
    public BikeComparison Comparison { get; internal init; } = null!;

    /// <summary>The whole verdict before.</summary>
    public BikeReport Before => Comparison.Before;

    /// <summary>The whole verdict after.</summary>
    public BikeReport After => Comparison.After;

    /// <summary>The balance in the settings of the ride and in the heaviest; empty without a charging curve.</summary>
    public ImmutableArray<Change<ChargingBalance>> Charging { get; internal init; }

    /// <summary>Where most amps are over after; null where none are, or it is not known.</summary>
    internal ExcessCurrentChange? Excess { get; init; }

    /// <summary>Standing times to half and to no start; empty without a battery capacity.</summary>
    public ImmutableArray<Change<BatteryRunTime>> Standing { get; internal init; }

    /// <summary>The flasher's load in each setting with other lamps of the flashing circuits lit.</summary>
    internal ImmutableArray<FlasherChange> Flashers { get; init; }

    /// <summary>The load resistors that would give a thermal flasher its load back; empty where it keeps
    /// enough.</summary>
    internal ImmutableArray<LampResistor> Resistors { get; init; }

    /// <summary>The lamps that are fed when they should be dark, since the swap.</summary>
    internal ImmutableArray<SneakFeed> SneakFeeds { get; init; }

    /// <summary>What the swap itself gives rise to, then what stands against the swapped bike; worst first.</summary>
    public ImmutableArray<Finding> Findings { get; internal set; }

    /// <summary>The verdict on the swapped bike.</summary>
    public BikeVerdict Verdict =>
        Findings.Any(f => f.Severity == Severity.Fault) ? BikeVerdict.DoesNotSuit : After.Verdict;

    /// <summary>The verdict in words: <c>suits</c>, <c>does not suit</c> or <c>not judged</c>.</summary>
    public string VerdictText => BikeReport.TextOf(Verdict);
}
