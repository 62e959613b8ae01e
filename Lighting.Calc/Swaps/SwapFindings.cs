using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Findings of a swap.</summary>
internal sealed class SwapFindings(
    Bike before,
    Bike after,
    SwapReport report,
    ImmutableArray<PointPair> pairs,
    CheckOptions options
)
{
    // Less light than this share of the old lamp's is worth a word: common practice, no source.
    private const double LessLight = 0.8;

    // Less more heat than this is not worth a word: common practice, no source.
    private const double LeastHeatWatts = 1;

    /// <summary>Those of the swap, then those of the check of the swapped bike that they do not say already.</summary>
    public IEnumerable<Finding> All()
    {
        Finding[] own = [.. Own()];
        return own.Concat(report.After.Findings.Where(f => !own.Any(o => SaysTheSame(o, f))));
    }

    private IEnumerable<Finding> Own() =>
        [
            .. Flasher(),
            .. Sneaks(),
            .. DarkAfter(),
            .. TwoFunctions.Findings(before, report.Replacements),
            .. LedVolts.Findings(NewLeds, after, report.After.DirectLighting),
            .. CoilVoltage(),
            .. Overcharge(),
            .. RegulatorHeat(),
            .. Polarity(),
            .. Light(),
            .. Approval(),
            .. FuseAdvice(),
        ];

    private static bool SaysTheSame(Finding own, Finding check) =>
        own.Kind switch
        {
            FindingKind.SurplusAfterSwap
            or FindingKind.OverchargeAfterSwap
            or FindingKind.ShuntLimitExceededAfterSwap => check.Kind
                is FindingKind.SurplusOutput
                    or FindingKind.Overcharge
                    or FindingKind.ShuntLimitExceeded,
            FindingKind.DarkAfterSwap => check.Kind is FindingKind.LampDark or FindingKind.DriverDropsOut
                && IsAboutTheSameLamp(own, check),
            FindingKind.SneakFeed or FindingKind.SneakFeedThroughLamp or FindingKind.SneakFeedThroughMore => check.Kind
                == FindingKind.LampFedUnintended
                && IsAboutTheSameLamp(own, check),
            _ => false,
        };

    // A finding about several lamps stays for the others.
    private static bool IsAboutTheSameLamp(Finding own, Finding check) =>
        check.Parts.IsEmpty && Name.Equal(own.Subject, check.Subject);

    private ImmutableArray<FittedLamp> NewLeds =>
        [
            .. after.Lamps.Where(
                (l, i) =>
                    report.Comparison.Lamps[i].IsReplaced
                    && l.Specification.Type is LampType.Led or LampType.LedResistor
            ),
        ];

    private IEnumerable<Finding> Flasher()
    {
        // Both sides of a bike are mostly alike: one finding.
        foreach (
            IGrouping<(double, double, double), FlasherChange> alike in report.Flashers.GroupBy(f =>
                ((double)f.NominalAfter.Watts, (double)f.FlasherLoad.Watts, Math.Round(f.HeatShare.DecimalFractions, 2))
            )
        )
        {
            FlasherChange flasher = alike.First();
            double share = flasher.Share.DecimalFractions;
            if (share >= SwapConstants.FlasherIsSure || before.Flasher == FlasherKind.None)
                continue;
            bool stops = share < SwapConstants.FlasherStops,
                isStated = before.Flasher == FlasherKind.Thermal;
            (FindingKind kind, Severity severity) =
                before.Flasher == FlasherKind.Electronic ? (FindingKind.ElectronicFlasherLoad, Severity.Note)
                : stops
                    ? (
                        isStated ? FindingKind.FlasherStops : FindingKind.UnstatedFlasherStops,
                        isStated ? Severity.Fault : Severity.Caution
                    )
                : (
                    isStated ? FindingKind.FlasherRateChanges : FindingKind.UnstatedFlasherRateChanges,
                    Severity.Caution
                );
            yield return new Finding(kind, severity, "flasher")
            {
                Value = flasher.NominalAfter,
                Limit = flasher.FlasherLoad,
                Figures =
                [
                    Ratio.FromDecimalFractions(stops ? SwapConstants.FlasherStops : SwapConstants.FlasherIsSure),
                    Ratio.FromPercent(Math.Round(flasher.HeatShare.Percent)),
                    Frequency.FromCyclesPerMinute(SwapConstants.LowestFlashRate),
                    Frequency.FromCyclesPerMinute(SwapConstants.LowestFixedLoadFlashRate),
                    Frequency.FromCyclesPerMinute(SwapConstants.HighestFlashRate),
                ],
                Parts = [.. alike.Select(f => f.Setting.ToString())],
            };
        }

        foreach (
            IGrouping<double, LampResistor> alike in report.Resistors.GroupBy(r =>
                Math.Round(r.Resistor.Resistance.Ohms, 6)
            )
        )
            yield return OfResistor(
                alike.First(),
                [
                    .. alike.Select(r =>
                        r.Lamp.Quantity > 1
                            ? FormattableString.Invariant($"{r.Lamp.Quantity} {r.Lamp.Lamp}")
                            : r.Lamp.Lamp
                    ),
                ]
            );
    }

    private static Finding OfResistor(LampResistor resistor, ImmutableArray<string> lamps)
    {
        ImmutableArray<IQuantity> figures =
        [
            resistor.Resistor.PreferredResistance,
            resistor.Resistor.Heat,
            resistor.Resistor.Voltage,
            resistor.HighestHeat,
            resistor.HighestVoltage,
            Power.FromWatts((double)resistor.HighestHeat.Watts * MomentaryLoads.LongestOnShare),
        ];
        return new Finding(FindingKind.LoadResistors, Severity.Note, "load resistors")
        {
            Value = resistor.Resistor.Resistance,
            Figures = resistor.Rating is { } rated ? figures.Add(rated) : figures,
            Parts = lamps,
        };
    }

    private IEnumerable<Finding> Sneaks()
    {
        foreach (SneakFeed sneak in report.SneakFeeds)
        {
            FindingKind kind = sneak.DiodesCure switch
            {
                true => FindingKind.SneakFeedThroughLamp,
                false => FindingKind.SneakFeedThroughMore,
                null => FindingKind.SneakFeed,
            };
            yield return new Finding(kind, Severity.Fault, sneak.Glowing.Lamp.Lamp)
            {
                Value = ElectricPotential.FromVolts(Math.Abs(sneak.Glowing.Voltage.Volts)),
                Setting = sneak.Setting,
                Figures =
                [
                    ElectricCurrent.FromAmperes(Math.Abs(sneak.Glowing.Current.Amperes)),
                    sneak.Glowing.RelativeLight!.Value,
                ],
                Parts = sneak.Through is { } lamp ? [lamp.Lamp.Lamp, lamp.Lamp.Feed!, lamp.Lamp.Return!] : [],
            };
        }
    }

    private IEnumerable<Finding> DarkAfter()
    {
        for (int i = 0; i < after.Lamps.Length; i++)
            if (
                pairs.FirstOrDefault(p =>
                    p.IsLitBefore(i) && SneakFeeds.Glows(p.Before.Lamps[i]) && !SneakFeeds.Glows(p.After.Lamps[i])
                ) is
                { } dark
            )
                yield return new Finding(FindingKind.DarkAfterSwap, Severity.Fault, after.Lamps[i].Lamp)
                {
                    Value = dark.After.Lamps[i].Voltage,
                    Setting = dark.After.Setting,
                };
    }

    private IEnumerable<Finding> Overcharge()
    {
        if (report.Excess is not { } surplus)
            yield break;
        ElectricCurrent now = surplus.After.OverchargeCurrent ?? surplus.After.Net!.Value;
        ElectricCurrent was = ElectricCurrent.FromAmperes(
            Math.Max(0, (surplus.Before.OverchargeCurrent ?? surplus.Before.Net!.Value).Amperes)
        );
        if (now.Amperes <= was.Amperes + 1e-9)
            yield break;
        ElectricCurrent? taken = ChargingConstants.FullBatteryCurrent(before);
        bool much = taken is null || now > taken;
        (FindingKind Kind, Severity Severity, string Subject)? found = options.Charging.RegulatorOf(after) switch
        {
            RegulatorKind.None => (
                FindingKind.OverchargeAfterSwap,
                much ? Severity.Fault : Severity.Caution,
                "battery"
            ),
            RegulatorKind.NotStated => (
                FindingKind.SurplusAfterSwap,
                much ? Severity.Caution : Severity.Note,
                "battery"
            ),
            RegulatorKind.Shunt => (
                FindingKind.ShuntLimitExceededAfterSwap,
                much ? Severity.Fault : Severity.Note,
                "regulator"
            ),
            _ => null,
        };
        if (found is { } it)
            yield return new Finding(it.Kind, it.Severity, it.Subject)
            {
                Value = now,
                Limit = was,
                Setting = surplus.Setting,
                Figures = taken is { } full ? [surplus.After.Speed, full] : [surplus.After.Speed],
            };
    }

    // The lights are on for hours; with them off nothing changes.
    private IEnumerable<Finding> RegulatorHeat()
    {
        if (
            report.Before.Engine?.Regulator is not { LightsOn: [.., var was] }
            || report.After.Engine?.Regulator is not { LightsOn: [.., var now] } duty
        )
            yield break;
        Power heat = now.Bus!.RegulatorHeat;
        if ((double)(heat - was.Bus!.RegulatorHeat).Watts < LeastHeatWatts)
            yield break;
        bool isOver = duty.Rating is { } limit && heat > limit;
        yield return new Finding(
            FindingKind.RegulatorHeatAfterSwap,
            isOver ? Severity.Fault : Severity.Caution,
            "regulator"
        )
        {
            Value = heat,
            Limit = was.Bus.RegulatorHeat,
            Setting = now.Setting,
            Figures = duty.Rating is { } rating ? [now.Bus.Speed, rating] : [now.Bus.Speed],
        };
    }

    private IEnumerable<Finding> CoilVoltage()
    {
        if (
            report.Before.DirectLighting?.Points is not [.., var was]
            || report.After.DirectLighting?.Points is not [.., var now]
        )
            yield break;
        bool rises = now.TerminalVoltage.Volts > 1.05 * was.TerminalVoltage.Volts;
        yield return new Finding(
            FindingKind.CoilVoltageAfterSwap,
            rises ? Severity.Caution : Severity.Note,
            "lighting coil"
        )
        {
            Value = now.TerminalVoltage,
            Limit = was.TerminalVoltage,
            Figures = [now.Speed],
        };
        if (rises)
            yield return CoilOvervoltageRemedy.Of(after, report.Before.DirectLighting, report.After.DirectLighting);
    }

    private IEnumerable<Finding> Polarity()
    {
        if (after.Earth == Earth.Positive && NewLeds is { IsEmpty: false } leds)
            yield return new Finding(FindingKind.LedPolarity, Severity.Caution, "polarity") { Parts = Names(leds) };
    }

    private IEnumerable<Finding> Light()
    {
        var unknown = new List<FittedLamp>();
        foreach (
            LampChange change in report.Comparison.Lamps.Where(l => l.IsReplaced && l.After?.RelativeLight is not null)
        )
        {
            if (change.LightBefore is not { } was || change.LightAfter is not { } now)
                unknown.Add(change.Lamp);
            else if (now.Lumens < LessLight * was.Lumens)
                yield return new Finding(FindingKind.LessLight, Severity.Caution, change.Lamp.Lamp)
                {
                    Value = now,
                    Limit = was,
                    Setting = change.Setting,
                    Figures = [Ratio.FromPercent(Math.Round(100 * now.Lumens / was.Lumens))],
                };
        }

        if (unknown.Count > 0)
            yield return new Finding(FindingKind.LightUnknown, Severity.Note, "light") { Parts = Names(unknown) };
    }

    private IEnumerable<Finding> Approval()
    {
        FittedLamp[] concerned =
        [
            .. before.Lamps.Where(
                (l, i) =>
                    NewLeds.Any(n => Name.Equal(n.Lamp, l.Lamp))
                    && report.Comparison.Lamps[i].IsReplaced
                    && RoadApproval.Concerns(l, before.SystemVoltage)
            ),
        ];
        if (concerned.Length > 0)
            yield return new Finding(FindingKind.RoadApproval, Severity.Caution, "road approval")
            {
                Parts = Names(concerned),
            };
    }

    private IEnumerable<Finding> FuseAdvice()
    {
        foreach (
            (FuseSuitability was, FuseSuitability now) in report.Comparison.Fuses.Select(f => (f.Before!, f.After!))
        )
            if (
                now.Verdict == FuseVerdict.Suits
                && now.Steady.WorstCurrent.Amperes < was.Steady.WorstCurrent.Amperes - 1e-9
                && now.Advice.Smallest is { } smallest
                && smallest.Amperes < now.Fuse.Rating.Amperes - 1e-9
            )
                yield return new Finding(FindingKind.SmallerFuse, Severity.Note, now.Fuse.Name)
                {
                    Value = now.Steady.WorstCurrent,
                    Limit = was.Steady.WorstCurrent,
                    Figures = [smallest],
                };
    }

    private static ImmutableArray<string> Names(IEnumerable<FittedLamp> lamps) => [.. lamps.Select(l => l.Lamp)];
}
