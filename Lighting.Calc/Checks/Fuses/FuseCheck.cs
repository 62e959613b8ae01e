using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Whether the fuses of a bike suit: load, switching on, wires, dead shorts, and the rating to fit.</summary>
internal static class FuseCheck
{
    /// <summary>Judges every fuse of a bike over the settings that were solved.</summary>
    /// <param name="bike">The bike the points were solved for.</param>
    /// <param name="settings">Its operating points; all settings, if the verdict shall hold for all.</param>
    /// <param name="options">By what to judge; null for the defaults.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>One for each fuse, in the order of the list.</returns>
    public static ImmutableArray<FuseSuitability> Evaluate(
        Bike bike,
        IReadOnlyList<OperatingPoint> settings,
        FuseOptions? options = null,
        CancellationToken cancellationToken = default
    )
    {
        options ??= new FuseOptions();
        return Evaluate(
            DownstreamScopes.Of(bike, settings.Select(p => p.Setting), cancellationToken),
            settings,
            OperatingPoint.FirstOfEachCurrents(settings),
            options
        );
    }

    internal static ImmutableArray<FuseSuitability> Evaluate(
        DownstreamScopes feeds,
        IReadOnlyList<OperatingPoint> settings,
        IReadOnlyList<OperatingPoint> distinct,
        FuseOptions options
    )
    {
        Check(feeds.Graph.Bike, settings, options);
        return [.. feeds.Scopes.Select((_, i) => Judge(feeds.Graph, i, feeds.Scopes, distinct, options))];
    }

    private static FuseSuitability Judge(
        DownstreamGraph graph,
        int index,
        ImmutableArray<FuseScope> scopes,
        IReadOnlyList<OperatingPoint> distinct,
        FuseOptions options
    )
    {
        Bike bike = graph.Bike;
        Fuse fuse = bike.Fuses[index];
        var momentary = new MomentaryLoads(bike, options);
        var judge = new FuseJudge(graph, fuse, scopes[index], distinct, options);
        ContinuousLoad steady = Load(judge, momentary, distinct, scopes[index].Lamps, index);
        FuseProtection protection = Protection(bike, judge);
        ImmutableArray<ShortCircuitCheck> clearing = judge.ClearAll();
        FuseInrush? surge =
            FuseInrush.Worst(bike, scopes[index], momentary.Continuous(distinct))
            ?? FuseInrush.Worst(bike, scopes[index], distinct);
        InrushCheck? switchingOn = surge?.Against(fuse.Style, judge.Fitted.Amperes);
        (Ratio Share, Setting Setting)? ageing = FuseInrush
            .Repeated(bike, scopes[index], distinct, momentary)
            ?.Ages(fuse.Style, judge.Fitted.Amperes);
        FuseAdvice advice = FuseAdviser.Advise(bike, judge, steady, surge);
        return new FuseReporter(graph, index, scopes, options).Report(
            judge,
            steady,
            switchingOn,
            ageing,
            protection,
            clearing,
            advice
        );
    }

    private static ContinuousLoad Load(
        FuseJudge judge,
        MomentaryLoads momentary,
        IReadOnlyList<OperatingPoint> points,
        IReadOnlySet<int> fed,
        int index
    )
    {
        OperatingPoint peak = points.MaxBy(p => p.Solved.FuseAmperes(index))!;
        OperatingPoint continuous = momentary
            .Continuous(points)
            .MaxBy(p => momentary.ContinuousAmperes(p.Solved, index, fed))!;
        return new ContinuousLoad
        {
            ContinuousCurrent = ElectricCurrent.FromAmperes(momentary.ContinuousAmperes(continuous.Solved, index, fed)),
            ContinuousSetting = continuous.Setting,
            WorstCurrent = ElectricCurrent.FromAmperes(peak.Solved.FuseAmperes(index)),
            WorstSetting = peak.Setting,
            WorstSpeed = peak.Bus?.Speed,
            UsableCurrent = ElectricCurrent.FromAmperes(judge.UsableAmperes(judge.Fitted.Amperes)),
            PeakLimit = ElectricCurrent.FromAmperes(judge.PeakAmperes(judge.Fitted.Amperes)),
            PeakHeldFor = judge.PeakHeldFor(judge.Fitted.Amperes, peak.Solved.FuseAmperes(index)),
            MomentaryLoads = momentary.Of(points, fed),
        };
    }

    private static FuseProtection Protection(Bike bike, FuseJudge judge)
    {
        RunAmpacityCheck? limiting = judge.Limiting;
        return new FuseProtection
        {
            DownstreamRuns = judge.DownstreamRuns,
            ReturnRuns = judge.ReturnRuns,
            LimitingRun = limiting,
            Protects = limiting is null ? null : judge.ProtectsAll(judge.Fitted.Amperes),
            Explanation =
                limiting is { } run ? $"the run '{run.Run.Name}' limits it: {run.Rating.Explanation}"
                : bike.HasNetwork ? "it feeds no run in any of these settings"
                : "the wires are not listed, so whether it protects them cannot be checked",
        };
    }

    private static void Check(Bike bike, IReadOnlyList<OperatingPoint> settings, FuseOptions options)
    {
        if (settings.Count == 0)
            throw new ArgumentException("At least one operating point is needed.", nameof(settings));
        if (settings.Any(p => !p.Solved.IsOf(bike)))
            throw new ArgumentException("The operating points are not of this bike.", nameof(settings));
        if (!(options.ContinuousLoadFactor.Percent is > 0 and <= 100))
            throw new ArgumentOutOfRangeException(
                nameof(options),
                options.ContinuousLoadFactor,
                "The steady limit is above 0 to 100 %."
            );
        if (options.LongestShort is { } longest && !(longest.Seconds > 0))
            throw new ArgumentOutOfRangeException(nameof(options), longest, "The longest short is above zero.");
    }
}
