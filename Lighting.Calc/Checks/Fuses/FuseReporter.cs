using System.Collections.Immutable;
using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Puts the parts of a fuse's judgement into a verdict, its reasons and findings.</summary>
internal sealed class FuseReporter(DownstreamGraph graph, int index, ImmutableArray<FuseScope> scopes, FuseOptions options)
{
    private readonly Fuse _fuse = graph.Bike.Fuses[index];
    private readonly FuseScope _scope = scopes[index];

    private bool IsLoose => graph.Bike.HasNetwork && !_scope.IsFed && !_scope.IsEarthSide;

    public FuseSuitability Report(FuseJudge judge, ContinuousLoad steady, InrushCheck? switchingOn, FuseProtection protection, ImmutableArray<ShortCircuitCheck> clearing, FuseAdvice advice)
    {
        ImmutableArray<string> wire = WireReasons(judge, protection), shorts = ClearingReasons(judge, clearing), load = LoadReasons(steady, switchingOn);
        FuseVerdict verdict = !wire.IsEmpty ? FuseVerdict.TooLargeForTheWire
            : !shorts.IsEmpty ? FuseVerdict.WillNotClear
            : !load.IsEmpty ? FuseVerdict.Overloaded
            : IsLoose ? FuseVerdict.NotJudged : FuseVerdict.Suits;
        ImmutableArray<string> reasons = [.. wire, .. shorts, .. load];
        string rest = verdict switch
        {
            FuseVerdict.Suits => Good(steady, protection),
            FuseVerdict.NotJudged => "no setting joins it to the battery",
            _ => $"{reasons[0]}; {advice.Explanation}",
        };
        return new FuseSuitability
        {
            Fuse = _fuse,
            ContinuousRating = judge.Fitted,
            Verdict = verdict,
            Headline = $"{A(_fuse.Rating)} {_fuse.Name}: {FuseSuitability.TextOf(verdict)} — {rest}",
            Reasons = reasons,
            Steady = steady,
            InrushCheck = switchingOn,
            Protection = protection,
            Clearing = clearing,
            Advice = advice,
            Findings = Findings(verdict, reasons, judge, steady, switchingOn, protection, clearing),
        };
    }

    private static string Good(ContinuousLoad steady, FuseProtection protection)
    {
        string text = $"{A(steady.WorstCurrent)} at most ({steady.WorstSetting}{Momentary(steady)}), {A(steady.UsableCurrent)} usable";
        return protection.LimitingRun is { Rating.Current: { } carries } run
            ? $"{text}; its weakest wire '{run.Run.Name}' carries {A(carries)}"
            : $"{text}; {protection.Explanation}";
    }

    private static string Momentary(ContinuousLoad steady) =>
        steady.ExcludingMomentary is { } rest && steady.WorstCurrent.Amperes - rest.Amperes > 0.005 ? $"; {A(steady.WorstCurrent - rest)} of it for moments only" : "";

    private static ImmutableArray<string> WireReasons(FuseJudge judge, FuseProtection protection) =>
    [
        .. protection.DownstreamRuns.Where(r => !FuseJudge.Protects(r, judge.Fitted.Amperes)).OrderBy(r => r.Rating.Current?.Amperes ?? -1).Select(r => r.Rating.Current is { } carries
            ? $"the run '{r.Run.Name}' ({r.Run.Wire}) carries {A(carries)}, less than the fuse's {A(judge.Fitted)}"
            : $"the run '{r.Run.Name}' cannot be shown to be protected: {r.Rating.Explanation}"),
    ];

    private ImmutableArray<string> ClearingReasons(FuseJudge judge, ImmutableArray<ShortCircuitCheck> clearing) =>
    [
        .. _scope.Bypassed is { } setting ? [$"both of its sides are joined to the battery without a fuse ({setting}): a short draws its current past it"] : Array.Empty<string>(),
        .. clearing.Where(c => !c.Clears).Select(c =>
            $"a dead short at the far end of '{c.Run.Name}' ({c.FarEnd}) draws {A(c.ProspectiveCurrent!.Value)}: {c.Opening!.Explanation}; it must open within {OpeningTime.Text(judge.LongestShortSeconds)}"),
    ];

    private static ImmutableArray<string> LoadReasons(ContinuousLoad steady, InrushCheck? switchingOn)
    {
        var reasons = ImmutableArray.CreateBuilder<string>();
        if (!steady.Suits)
            reasons.Add($"it carries {A(steady.WorstCurrent)} ({steady.WorstSetting}{Momentary(steady)}), more than the {A(steady.UsableCurrent)} it may carry without end");
        if (switchingOn?.Survives == false)
            reasons.Add($"switching on may open it: {switchingOn.Explanation}");
        return reasons.ToImmutable();
    }

    private ImmutableArray<Finding> Findings(FuseVerdict verdict, ImmutableArray<string> reasons, FuseJudge judge, ContinuousLoad steady, InrushCheck? switchingOn, FuseProtection protection, ImmutableArray<ShortCircuitCheck> clearing)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        foreach (string reason in reasons)
            Add(Severity.Fault, reason);
        foreach (RunAmpacityCheck run in protection.DownstreamRuns.Concat(protection.ReturnRuns).Where(r => r.HoldsLoad == false))
            findings.Add(new(Severity.Fault, run.Run.Name, $"the run carries {A(run.WorstCurrent)} ({run.WorstSetting}), more than its wire's {A(run.Rating.Current!.Value)}: {run.Rating.Explanation}"));
        foreach (RunAmpacityCheck run in protection.ReturnRuns.Where(r => r.HoldsLoad is null))
            findings.Add(new(Severity.Caution, run.Run.Name, $"whether the run carries its {A(run.WorstCurrent)} cannot be checked: {run.Rating.Explanation}"));
        foreach (int run in _scope.Runs.Keys)
            foreach (int other in Enumerable.Range(0, scopes.Length).Where(i => i > index && scopes[i].Runs.ContainsKey(run)))
                Add(Severity.Caution, $"the run '{graph.Bike.Runs[run].Name}' is fed through '{graph.Bike.Fuses[other].Name}' too: a fault in it may draw what both fuses carry together");
        if (IsLoose)
            Add(Severity.Caution, "no setting joins it to the battery, so its load and its wires were not judged");
        if (!graph.Bike.HasNetwork)
            Add(Severity.Note, "the wires are not listed: whether it protects them and clears a short cannot be checked");
        if (judge.Fitted.Amperes != _fuse.Rating.Amperes)
            Add(Severity.Note, $"taken as marked with the current at which it blows: {A(_fuse.Rating)} marked is {A(judge.Fitted)} without end");
        if (graph.Bike.HasNetwork && !DownstreamGraph.KnowsOhms(_fuse))
            Add(Severity.Note, "its own resistance is not listed and not published; a dead short is reckoned without it");
        if (clearing.Any(c => c.Opening is { Slowest: { } slowest } && slowest.Seconds > FuseOptions.QuickShortSeconds))
            Add(Severity.Note, "the longest published times of its style are long for a wire with a dead short; parts sold as fast-acting promise 5 s to 10 s at 200 % of the rating");
        if (clearing.Any(c => c.ReturnFrom is null))
            Add(Severity.Note, $"no lamp tells where a short of {string.Join(", ", clearing.Where(c => c.ReturnFrom is null).Select(c => $"'{c.Run.Name}'"))} returns; the frame is taken as without resistance there");
        if (switchingOn is { Survives: null } surge && surge.Peak > surge.Steady)
            Add(Severity.Note, $"whether it outlives the {A(surge.Peak)} of switching on is not known: the shortest opening times of {TimeCurrentLimits.NameOf(_fuse.Style)} fuses are not published");
        if (steady.WorstCurrent.Amperes <= 0)
            Add(Severity.Note, "it carries no current in any of these settings");
        if (verdict == FuseVerdict.Suits && options.ContinuousLoadFactor.Percent > 80)
            Add(Severity.Caution, string.Create(CultureInfo.InvariantCulture, $"judged at {options.ContinuousLoadFactor.Percent:0.#} % of its rating; 75 % is usual"));
        return findings.ToImmutable();

        void Add(Severity severity, string message) => findings.Add(new(severity, _fuse.Name, message));
    }

    private static string A(ElectricCurrent current) => string.Create(CultureInfo.InvariantCulture, $"{current.Amperes:0.##} A");
}
