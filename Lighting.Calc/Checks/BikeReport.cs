using System.Collections.Immutable;
using System.Diagnostics;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Everything a check found about a bike.</summary>
public sealed class BikeReport
{
    internal BikeReport() { }

    /// <summary>The bike.</summary>
    public Bike Bike { get; internal init; } = null!;

    /// <summary>The harness it was solved as.</summary>
    public HarnessNetwork Network { get; internal init; } = null!;

    /// <summary>Voltage of the source: held at the battery's terminals with the engine running, as far as the output
    /// reaches; before the battery's resistance with the engine off. Each setting has its own, <see
    /// cref="OperatingPoint.SupplyVoltage"/>.</summary>
    public ElectricPotential SupplyVoltage { get; internal init; }

    /// <summary>Only the settings in which this holds were looked at.</summary>
    public Condition When { get; internal init; } = Condition.Always;

    /// <summary>Every setting that has an operating point.</summary>
    public ImmutableArray<OperatingPoint> Settings { get; internal init; }

    /// <summary>The suitability of every fuse.</summary>
    public ImmutableArray<FuseSuitability> Fuses { get; internal init; }

    /// <summary>Each lamp's breakdown in its worst setting that lasts: with no momentary switch worked that it
    /// does not need.</summary>
    public ImmutableArray<VoltageDropBreakdown> WorstDrops { get; internal init; }

    /// <summary>The charging balance; null without a charging curve, or where the lamps are fed by a lighting coil
    /// directly.</summary>
    public ChargingReport? Charging { get; internal init; }

    /// <summary>Lamps and battery over engine speed, by day and by night; null without a charging list, with the
    /// engine off, at a
    /// given voltage, and for a lighting coil.</summary>
    public EngineReport? Engine => LazyEngine?.Value;

    /// <summary>Made when it is first asked for: many bikes in a row do not need it.</summary>
    internal Lazy<EngineReport>? LazyEngine { get; init; }

    /// <summary>The direct lighting in the heaviest setting; null where a battery feeds the lamps, or without a
    /// charging curve.</summary>
    public DirectLightingReport? DirectLighting { get; internal init; }

    /// <summary>What was found, worst first.</summary>
    public ImmutableArray<Finding> Findings { get; internal init; }

    /// <summary>Why the bike does not suit, each cause once, the gravest first; empty where it suits or is not
    /// judged.</summary>
    public ImmutableArray<VerdictCause> Causes => VerdictCauses.Of(this);

    /// <summary>The setting that draws most.</summary>
    public OperatingPoint Heaviest => Settings.MaxBy(s => s.TotalCurrent.Amperes)!;

    /// <summary>What decides and could not be judged, a sentence each; empty when everything was.</summary>
    public ImmutableArray<string> NotJudged { get; internal init; }

    /// <summary>The verdict.</summary>
    public BikeVerdict Verdict =>
        Findings.Any(f => f.Severity == Severity.Fault)
        || Fuses.Any(f => f.Verdict is not (FuseVerdict.Suits or FuseVerdict.NotJudged))
            ? BikeVerdict.DoesNotSuit
        : NotJudged.IsEmpty ? BikeVerdict.Suits
        : BikeVerdict.NotJudged;

    /// <summary>The verdict in words: <c>suits</c>, <c>does not suit</c> or <c>not judged</c>.</summary>
    public string VerdictText => TextOf(Verdict);

    /// <summary>The verdict with the gravest causes, or with what it rests on: at most three lines of 80
    /// columns.</summary>
    public string Headline => CheckHeadline.Of(this);

    /// <summary>What to beware of before anybody acts on the report, a sentence or two each; show them with
    /// it.</summary>
    public ImmutableArray<string> Cautions => CautionTexts.OfWork(Bike);

    internal static string TextOf(BikeVerdict verdict) =>
        verdict switch
        {
            BikeVerdict.Suits => "suits",
            BikeVerdict.DoesNotSuit => "does not suit",
            BikeVerdict.NotJudged => "not judged",
            _ => throw new UnreachableException($"Unknown verdict {verdict}."),
        };
}
