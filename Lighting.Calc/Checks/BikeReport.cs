using System.Collections.Immutable;
using System.Diagnostics;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Everything a check found about a bike.</summary>
public sealed record BikeReport
{
    /// <summary>The bike.</summary>
    public required Bike Bike { get; init; }

    /// <summary>The harness it was solved as.</summary>
    public required HarnessNetwork Network { get; init; }

    /// <summary>Volts of the source before the battery's resistance.</summary>
    public required ElectricPotential SupplyVoltage { get; init; }

    /// <summary>Every setting that has an operating point.</summary>
    public required ImmutableArray<OperatingPoint> Settings { get; init; }

    /// <summary>The suitability of every fuse.</summary>
    public required ImmutableArray<FuseSuitability> Fuses { get; init; }

    /// <summary>Each lamp's ledger in its worst setting.</summary>
    public required ImmutableArray<VoltageDropBreakdown> WorstDrops { get; init; }

    /// <summary>The charging balance; null without a charging curve, or where the lamps are fed by a lighting coil directly.</summary>
    public required ChargingReport? Charging { get; init; }

    /// <summary>The direct lighting in the heaviest setting; null where a battery feeds the lamps, or without a charging curve.</summary>
    public required DirectLightingReport? DirectLighting { get; init; }

    /// <summary>What was found, worst first.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>Why the bike does not suit, each cause once, the gravest first; empty where it suits or is not judged.</summary>
    public ImmutableArray<VerdictCause> Causes => VerdictCauses.Of(this);

    /// <summary>The setting that draws most.</summary>
    public OperatingPoint Heaviest => Settings.MaxBy(s => s.TotalCurrent.Amperes)!;

    /// <summary>What decides and could not be judged, a sentence each; empty when everything was.</summary>
    public required ImmutableArray<string> NotJudged { get; init; }

    /// <summary>The verdict.</summary>
    public BikeVerdict Verdict =>
        Findings.Any(f => f.Severity == Severity.Fault) || Fuses.Any(f => f.Verdict is not (FuseVerdict.Suits or FuseVerdict.NotJudged)) ? BikeVerdict.DoesNotSuit
        : NotJudged.IsEmpty ? BikeVerdict.Suits : BikeVerdict.NotJudged;

    /// <summary>The verdict in words: <c>suits</c>, <c>does not suit</c> or <c>not judged</c>.</summary>
    public string VerdictText => TextOf(Verdict);

    internal static string TextOf(BikeVerdict verdict) => verdict switch
    {
        BikeVerdict.Suits => "suits",
        BikeVerdict.DoesNotSuit => "does not suit",
        BikeVerdict.NotJudged => "not judged",
        _ => throw new UnreachableException($"Unknown verdict {verdict}."),
    };
}
