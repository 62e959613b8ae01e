using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Finds every run that no fuse protects.</summary>
internal static class UnfusedRuns
{
    /// <summary>A caution for the runs that feed something, a note for the battery
    /// lead.</summary>
    /// <returns>One finding for all runs of either kind.</returns>
    public static ImmutableArray<Finding> Findings(
        Bike bike,
        IEnumerable<Setting> settings,
        CancellationToken cancellationToken = default
    ) => Findings(DownstreamScopes.Of(bike, settings, cancellationToken), cancellationToken);

    internal static ImmutableArray<Finding> Findings(DownstreamScopes feeds, CancellationToken cancellationToken) =>
        [
            .. Of(feeds, cancellationToken)
                .Select(u =>
                    u.IsBatteryLead
                        ? new Finding(FindingKind.BatteryLead, Severity.Note, u.Run.Name)
                        : new Finding(FindingKind.RunUnfused, Severity.Caution, u.Run.Name) { Setting = u.Setting }
                )
                .TogetherByKind(),
        ];

    /// <summary>The runs that the live terminal reaches without passing a fuse, and whose lamps do not return through
    /// one, in the order of the list.</summary>
    internal static ImmutableArray<UnfusedRun> Of(DownstreamScopes feeds, CancellationToken cancellationToken)
    {
        (DownstreamGraph graph, ImmutableArray<FeedState> states, ImmutableArray<FuseScope> scopes) = feeds;
        Bike bike = graph.Bike;
        var fused = scopes.Where(s => s.IsEarthSide).SelectMany(s => s.Runs.Keys).ToHashSet();
        var found = new SortedDictionary<int, UnfusedRun>();
        var seen = new HashSet<Reached>();
        foreach (FeedState state in states)
        {
            cancellationToken.ThrowIfCancellationRequested();
            Reached unfused = graph.Walk(graph.Harness.Live, state, throughFuses: false);
            // All that is looked at lies within this walk.
            if (!seen.Add(unfused))
                continue;
            foreach (HarnessPart run in graph.Harness.Runs.Where(unfused.Reaches))
            {
                if (fused.Contains(run.Index))
                    continue;
                Fuse? lead = LargestFuseLedTo(graph, state, run, unfused);
                if (!found.TryGetValue(run.Index, out UnfusedRun? known) || known.IsBatteryLead && lead is null)
                    found[run.Index] = new UnfusedRun(bike.Runs[run.Index], state.Setting, lead);
                else if (lead is not null && known.LargestFuse is { } other && lead.Rating > other.Rating)
                    found[run.Index] = new UnfusedRun(known.Run, known.Setting, lead);
            }
        }

        return [.. found.Values];
    }

    // Null where the run feeds a lamp without a fuse between, or leads to no fuse.
    private static Fuse? LargestFuseLedTo(DownstreamGraph graph, FeedState state, HarnessPart run, Reached unfused)
    {
        HarnessGraph harness = graph.Harness;
        int far = run.B == harness.Live ? run.A : unfused.FarEndOf(run);
        Reached beyond = graph.Walk(far, state, run, throughFuses: false);
        bool feedsLamp = harness.Lamps.Any(l => Feeds(l.A) || Feeds(l.B));
        return feedsLamp
            ? null
            : harness.Fuses.Where(beyond.Meets).Select(f => graph.Bike.Fuses[f.Index]).MaxBy(f => f.Rating.Amperes);

        bool Feeds(int point) => point != harness.Live && point != harness.Earth && beyond.Reaches(point);
    }
}
