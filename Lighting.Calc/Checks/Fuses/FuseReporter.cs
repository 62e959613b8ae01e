using System.Collections.Immutable;
using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Puts the parts of a fuse's judgement into a verdict, its reasons and findings.</summary>
internal sealed class FuseReporter(
    DownstreamGraph graph,
    int index,
    ImmutableArray<FuseScope> scopes,
    FuseOptions options
)
{
    private readonly Fuse _fuse = graph.Bike.Fuses[index];
    private readonly FuseScope _scope = scopes[index];

    private bool IsLoose => graph.Bike.HasNetwork && !_scope.IsFed && !_scope.IsEarthSide;

    public FuseSuitability Report(
        FuseJudge judge,
        ContinuousLoad load,
        InrushCheck? inrush,
        (Ratio Share, Setting Setting)? ageing,
        FuseProtection protection,
        ImmutableArray<ShortCircuitCheck> clearing,
        FuseAdvice advice
    )
    {
        ImmutableArray<Finding> wires = [.. Wires(judge, protection)],
            shorts = [.. Shorts(clearing)],
            loads = [.. Loads(load, inrush), .. Ageing(ageing)];
        FuseVerdict verdict =
            HasFault(wires) ? FuseVerdict.TooLargeForTheWire
            : HasFault(shorts) ? FuseVerdict.WillNotClear
            : HasFault(loads) ? FuseVerdict.Overloaded
            : IsLoose ? FuseVerdict.NotJudged
            : FuseVerdict.Suits;
        ImmutableArray<Finding> all = [.. wires, .. shorts, .. loads];
        ImmutableArray<string> reasons = [.. all.Where(f => f.Severity == Severity.Fault).Select(f => f.Message)];
        string rest = verdict switch
        {
            FuseVerdict.Suits => Good(load, protection),
            FuseVerdict.NotJudged => "no setting joins it to the battery",
            _ => $"{char.ToLowerInvariant(reasons[0][0])}{reasons[0][1..].TrimEnd('.')}; {advice.Explanation}",
        };
        return new FuseSuitability
        {
            Fuse = _fuse,
            ContinuousRating = judge.Fitted,
            Verdict = verdict,
            Headline = $"{A(_fuse.Rating)} {_fuse.Name}: {FuseSuitability.TextOf(verdict)} — {rest}",
            Reasons = reasons,
            Steady = load,
            InrushCheck = inrush,
            Protection = protection,
            Clearing = clearing,
            Advice = advice,
            Findings =
            [
                .. all.OrderByDescending(f => f.Severity),
                .. Others(verdict, judge, load, inrush, protection, clearing),
            ],
        };
    }

    private static bool HasFault(ImmutableArray<Finding> findings) => findings.Any(f => f.Severity == Severity.Fault);

    private string Good(ContinuousLoad load, FuseProtection protection)
    {
        // Loads of constant power draw most at the lowest voltage, every other at the highest.
        RotationalSpeed? speed = graph.Bike.Lamps.Any(l => l.Specification.Type == LampType.Led)
            ? load.WorstSpeed
            : null;
        string[] where =
        [
            .. load.WorstSetting.Equals(load.ContinuousSetting) ? Array.Empty<string>() : [$"{load.WorstSetting}"],
            .. speed is { } rpm ? [FindingWords.Text(rpm)] : Array.Empty<string>(),
        ];
        string text =
            $"{A(load.ContinuousCurrent)} continuous ({load.ContinuousSetting}), limit {A(load.UsableCurrent)}; "
            + $"{A(load.WorstCurrent)} at the "
            + $"peak{(where.Length == 0 ? "" : $" ({string.Join(", at ", where)})")}, limit "
            + $"{A(load.PeakLimit)}";
        return protection.LimitingRun is { Rating.Alone: { } rated } run
            ? $"{text}; its weakest wire '{run.Run.Name}' is rated {A(rated)}"
            : $"{text}; {protection.Explanation}";
    }

    private IEnumerable<Finding> Wires(FuseJudge judge, FuseProtection protection)
    {
        RunAmpacityCheck[] all = [.. protection.DownstreamRuns, .. protection.ReturnRuns];
        double fuse = judge.Fitted.Amperes;
        RunAmpacityCheck[] unrated = [.. all.Where(r => r.Rating.Alone is null)],
            below = [.. all.Where(r => r.Rating.Alone is not null && !FuseJudge.Protects(r, fuse))],
            held = [.. all.Where(r => FuseJudge.Protects(r, fuse))];
        if (Of(FindingKind.WiresRatedBelowFuse, Severity.Fault, below, r => r.Rating.Alone) is { } tooLarge)
            yield return tooLarge;
        if (unrated.Length > 0)
            yield return new Finding(FindingKind.WiresUnratedBehindFuse, Severity.Fault, _fuse.Name)
            {
                Parts = NamesOf(unrated),
                Detail = unrated[0].Rating.Explanation,
            };
        RunAmpacityCheck[] crowded = [.. held.Where(r => r.Rating.Current is null)];
        if (crowded.Length > 0)
            yield return new Finding(FindingKind.WiresUnratedBehindFuse, Severity.Caution, _fuse.Name)
            {
                Parts = NamesOf(crowded),
                Detail = crowded[0].Rating.Explanation,
            };
        if (Of(FindingKind.CableKindNeeded, Severity.Caution, held, r => r.IfOrdinary?.Alone) is { } cable)
            yield return cable;
        if (Of(FindingKind.BundledWiresBelowFuse, Severity.Caution, held, r => r.Rating.Current) is { } bundled)
            yield return bundled;

        Finding? Of(
            FindingKind kind,
            Severity severity,
            RunAmpacityCheck[] runs,
            Func<RunAmpacityCheck, ElectricCurrent?> rating
        )
        {
            RunAmpacityCheck[] low = [.. runs.Where(r => rating(r) is { } rated && rated.Amperes < fuse - 1e-9)];
            return low.MinBy(r => rating(r)!.Value.Amperes) is { } least
                ? new Finding(kind, severity, _fuse.Name)
                {
                    Value = rating(least),
                    Limit = judge.Fitted,
                    Parts = NamesOf(low),
                    Detail = $"'{least.Run.Name}', {least.Rating.Explanation}",
                }
                : null;
        }
    }

    private IEnumerable<Finding> Shorts(ImmutableArray<ShortCircuitCheck> clearing)
    {
        if (_scope.Bypassed is { } setting)
            yield return new Finding(FindingKind.FuseBypassed, Severity.Fault, _fuse.Name) { Setting = setting };
        ShortCircuitCheck[] failing = [.. clearing.Where(c => c.Clears == false)],
            open = [.. clearing.Where(c => c.Clears is null)];
        if (failing.Length > 0)
            yield return new Finding(FindingKind.ShortDoesNotClear, Severity.Fault, _fuse.Name)
            {
                Value = failing[0].ProspectiveCurrent,
                Parts = [.. failing.Select(c => c.Run.Name)],
                Detail = Why(failing[0]),
            };
        if (open.Length > 0)
            yield return new Finding(FindingKind.ShortNotShownToClear, Severity.Caution, _fuse.Name)
            {
                Parts = [.. open.Select(c => c.Run.Name)],
                Detail =
                    $"no opening time within {ShortCircuitHeat.LongestSeconds:0} s is published for "
                    + $"{TimeCurrentLimits.NameOf(_fuse.Style)} fuses; a blade fuse, whose times are published, or a "
                    + $"larger wire would show it",
            };
    }

    private static string Why(ShortCircuitCheck check) =>
        check.LetThroughAmpereSquaredSeconds is { } heat && heat > check.WithstandAmpereSquaredSeconds
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"'{check.Run.Name}' draws {A(check.ProspectiveCurrent!.Value)}, and the smallest wire in its way "
                    + $"({check.SmallestWire.SquareMillimeters:0.##} mm²) withstands "
                    + $"{check.WithstandAmpereSquaredSeconds:0} A²s of the {heat:0} A²s passed until the fuse opens"
            )
            : $"'{check.Run.Name}' draws {A(check.ProspectiveCurrent!.Value)}: {check.Opening!.Explanation}";

    private IEnumerable<Finding> Loads(ContinuousLoad load, InrushCheck? inrush)
    {
        if (load.Headroom.Amperes < -1e-9)
            yield return new Finding(FindingKind.FuseContinuousLoadTooLarge, Severity.Fault, _fuse.Name)
            {
                Value = load.ContinuousCurrent,
                Limit = load.UsableCurrent,
                Setting = load.ContinuousSetting,
            };
        if (load.PeakExceedsRating)
            yield return new Finding(
                load.HoldsPeak ? FindingKind.FusePeakAboveRating : FindingKind.FusePeakTooLarge,
                load.HoldsPeak ? Severity.Note : Severity.Fault,
                _fuse.Name
            )
            {
                Value = load.WorstCurrent,
                Limit = load.PeakLimit,
                Setting = load.WorstSetting,
                Detail = load.PeakHeldFor is { } least
                    ? $"the next higher published current is held for at least {OpeningTime.Text(least.Seconds)}"
                    : "no time that it holds this current is published",
            };
        if (inrush?.Survives == false)
            yield return new Finding(FindingKind.FuseInrushTooLarge, Severity.Fault, _fuse.Name)
            {
                Detail = inrush.Explanation,
            };
    }

    private IEnumerable<Finding> Ageing((Ratio Share, Setting Setting)? ageing)
    {
        if (ageing is { } often)
            yield return new Finding(FindingKind.FuseAgesByInrush, Severity.Caution, _fuse.Name)
            {
                Value = often.Share,
                Limit = FusePulses.Longest.Share,
                Setting = often.Setting,
                Detail = FusePulses.Withstood(often.Share.DecimalFractions) is { } pulses
                    ? string.Create(CultureInfo.InvariantCulture, $"about {pulses:#,0} times")
                    : "fewer than 100 times",
            };
    }

    private static ImmutableArray<string> NamesOf(IEnumerable<RunAmpacityCheck> runs) =>
        [.. runs.Select(r => r.Run.Name)];

    private ImmutableArray<Finding> Others(
        FuseVerdict verdict,
        FuseJudge judge,
        ContinuousLoad steady,
        InrushCheck? switchingOn,
        FuseProtection protection,
        ImmutableArray<ShortCircuitCheck> clearing
    )
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        foreach (
            RunAmpacityCheck run in protection
                .DownstreamRuns.Concat(protection.ReturnRuns)
                .Where(r => r.HoldsLoad == false)
        )
            findings.Add(
                new(FindingKind.RunOverloaded, Severity.Fault, run.Run.Name)
                {
                    Value = run.WorstCurrent,
                    Limit = run.Rating.Current,
                    Setting = run.WorstSetting,
                    Detail = run.Rating.Explanation,
                }
            );
        foreach (int run in _scope.Runs.Keys)
            foreach (
                int other in Enumerable.Range(0, scopes.Length).Where(i => i > index && scopes[i].Runs.ContainsKey(run))
            )
                findings.Add(
                    new(FindingKind.RunFedByTwoFuses, Severity.Caution, _fuse.Name)
                    {
                        Parts = [graph.Bike.Runs[run].Name, graph.Bike.Fuses[other].Name],
                    }
                );
        if (IsLoose)
            findings.Add(new(FindingKind.FuseNotJudged, Severity.Caution, _fuse.Name));
        if (!graph.Bike.HasNetwork)
            findings.Add(new(FindingKind.FuseWiresNotListed, Severity.Note, _fuse.Name));
        if (judge.IsMarkedWithBlowingCurrent)
            findings.Add(
                new(FindingKind.FuseMarkedWithBlowingCurrent, Severity.Note, _fuse.Name)
                {
                    Value = _fuse.Rating,
                    Limit = judge.Fitted,
                }
            );
        if (graph.Bike.HasNetwork && !DownstreamGraph.KnowsOhms(_fuse))
            findings.Add(new(FindingKind.FuseResistanceUnknown, Severity.Note, _fuse.Name));
        if (clearing.Any(c => c.ReturnFrom is null))
            findings.Add(
                new(FindingKind.ShortReturnUnknown, Severity.Note, _fuse.Name)
                {
                    Parts = [.. clearing.Where(c => c.ReturnFrom is null).Select(c => c.Run.Name)],
                }
            );
        if (switchingOn is { Survives: null } surge && surge.Peak > surge.Steady)
            findings.Add(
                new(FindingKind.InrushNotJudged, Severity.Note, _fuse.Name)
                {
                    Value = surge.Peak,
                    Detail = TimeCurrentLimits.NameOf(_fuse.Style),
                }
            );
        if (steady.WorstCurrent.Amperes <= 0)
            findings.Add(new(FindingKind.FuseWithoutCurrent, Severity.Note, _fuse.Name));
        if (verdict == FuseVerdict.Suits && options.ContinuousLoadFactor.Percent > 80)
            findings.Add(
                new(FindingKind.FuseLoadFactorUnusual, Severity.Caution, _fuse.Name)
                {
                    Value = options.ContinuousLoadFactor,
                }
            );
        return findings.ToImmutable();
    }

    private static string A(ElectricCurrent current) =>
        string.Create(CultureInfo.InvariantCulture, $"{current.Amperes:0.##} A");
}
