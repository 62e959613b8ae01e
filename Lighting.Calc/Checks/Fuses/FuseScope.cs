using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What one fuse feeds, over all settings: runs up to the next fuse, lamps, and the runs their current returns
/// by.</summary>
/// <remarks>
/// A fuse in the earth lead (neither side reached from the live terminal) is passed by a short to the frame on its way
/// back; it protects the runs that no fuse in the feed protects and whose lamps return through it.
/// </remarks>
internal sealed class FuseScope
{
    private readonly DownstreamGraph _graph;
    private readonly HarnessGraph _harness;
    private readonly HarnessPart _fuse;
    private readonly SortedDictionary<int, DownstreamRun> _runs = [];

    // Of each run the ohms of its dead short so far; below zero where there is none.
    private readonly double[] _mostOhms;
    private readonly HashSet<int> _lamps = [];
    private readonly HashSet<int> _returnRuns = [];
    private readonly HashSet<(int Lamp, Reached Back)> _returned = [];

    private FuseScope(DownstreamGraph graph, int fuse)
    {
        _graph = graph;
        _harness = graph.Harness;
        _fuse = _harness.Fuses[fuse];
        _mostOhms = new double[_harness.Runs.Length];
        Array.Fill(_mostOhms, -1);
    }

    /// <summary>The runs that it feeds, by their index in the bike's list.</summary>
    public IReadOnlyDictionary<int, DownstreamRun> Runs => _runs;

    /// <summary>Indices of the lamps whose current passes the fuse in some setting.</summary>
    public IReadOnlySet<int> Lamps => _lamps;

    /// <summary>The runs, by index, that only carry the current of its lamps back: of those that no other fuse lies
    /// before.</summary>
    public IReadOnlySet<int> ReturnRuns => _returnRuns;

    /// <summary>Whether it is in the earth lead.</summary>
    public bool IsEarthSide { get; private set; }

    /// <summary>Whether any setting reaches it from the battery.</summary>
    public bool IsFed { get; private set; }

    /// <summary>A setting in which both of its sides are joined to the live terminal without a fuse; null when there is
    /// none.</summary>
    public Setting? Bypassed { get; private set; }

    public static FuseScope Of(
        DownstreamGraph graph,
        int fuse,
        ImmutableArray<FeedState> states,
        CancellationToken cancellationToken = default
    )
    {
        var scope = new FuseScope(graph, fuse);
        foreach (FeedState state in states)
        {
            cancellationToken.ThrowIfCancellationRequested();
            scope.AddFeedSide(state);
        }

        foreach (FeedState state in scope.IsFed ? [] : states)
        {
            cancellationToken.ThrowIfCancellationRequested();
            scope.AddEarthSide(state);
        }

        return scope;
    }

    private void AddFeedSide(FeedState state)
    {
        Reached feed = _graph.Walk(_harness.Live, state, _fuse);
        int supply = feed.Reaches(_fuse.A) ? _fuse.A : _fuse.B,
            load = _fuse.Other(supply);
        if (!feed.Reaches(supply))
            return;
        IsFed = true;
        Reached unfused = _graph.Walk(_harness.Live, state, throughFuses: false);
        if (unfused.Reaches(_fuse))
            Bypassed ??= state.Setting;
        Reached own = _graph.Walk(load, state, throughFuses: false);
        Reached back = _graph.Walk(_harness.Earth, state);
        AddRuns(state, own, unfused, feed.CostTo(supply), feed.PathTo(supply), back);
        // With no other fuse the two walks are one.
        AddLamps(_graph.Bike.Fuses.Length == 1 ? own : _graph.Walk(load, state, _fuse), own, unfused, back);
    }

    private void AddRuns(
        FeedState state,
        Reached own,
        Reached unfused,
        double ohmsBefore,
        ImmutableArray<HarnessPart> pathBefore,
        Reached back
    )
    {
        foreach (HarnessPart run in _harness.Runs)
        {
            if (
                !own.Reaches(run)
                || run.A == _harness.Live
                || run.B == _harness.Live
                || run.A == _harness.Earth
                || run.B == _harness.Earth
                || unfused.Reaches(run.A)
            )
                continue;
            int far = own.FarEndOf(run);
            Keep(state, run, far, ohmsBefore + own.CostTo(far), new FeedPath(pathBefore, _fuse, own), back);
        }
    }

    private void Keep(FeedState state, HarnessPart run, int far, double feedOhms, FeedPath path, Reached back)
    {
        // Where the short meets the frame is not known; the return of the lamp beyond it that is worst off is taken.
        Reached beyond = _graph.Walk(far, state, run, throughFuses: false);
        double returnOhms = 0;
        int from = -1;
        foreach ((_, int point) in beyond.Lamps)
        {
            if (back.Reaches(point) && (from < 0 || back.CostTo(point) > returnOhms))
                (returnOhms, from) = (back.CostTo(point), point);
        }

        if (feedOhms + returnOhms <= _mostOhms[run.Index])
            return;
        _mostOhms[run.Index] = feedOhms + returnOhms;
        _runs[run.Index] = new DownstreamRun(
            _graph.Bike.Runs[run.Index],
            _harness.Points[far],
            feedOhms,
            returnOhms,
            from < 0 ? null : _harness.Points[from],
            [.. path.To(far).Select(p => p.Name)],
            LeastArea(path.To(far).Concat(from < 0 ? [] : back.PathTo(from)), run),
            state.Setting
        );
    }

    private double LeastArea(IEnumerable<HarnessPart> way, HarnessPart run) =>
        way.Append(run)
            .Where(p => p.Kind == HarnessPartKind.Run)
            .Min(p => _graph.Bike.Runs[p.Index].Wire.CopperArea.SquareMillimeters);

    private void AddLamps(Reached reached, Reached own, Reached unfused, Reached back)
    {
        foreach ((int lamp, int returns) in reached.Lamps)
        {
            if (unfused.Feeds(lamp))
                continue;
            _lamps.Add(lamp);
            // Behind another fuse it is that one that limits what returns.
            if (!own.Feeds(lamp) || !back.Reaches(returns) || !_returned.Add((lamp, back)))
                continue;
            foreach (HarnessPart part in back.PathTo(returns))
                if (part.Kind == HarnessPartKind.Run)
                    _returnRuns.Add(part.Index);
        }
    }

    private void AddEarthSide(FeedState state)
    {
        Reached back = _graph.Walk(_harness.Earth, state),
            without = _graph.Walk(_harness.Earth, state, _fuse);
        int frame = without.Reaches(_fuse.A) ? _fuse.B : _fuse.A;
        if (without.Reaches(_fuse.A) == without.Reaches(_fuse.B))
            return;
        IsEarthSide = true;
        Reached unfused = _graph.Walk(_harness.Live, state, throughFuses: false);
        foreach (
            HarnessPart run in _harness.Runs.Where(p =>
                unfused.Reaches(p) && p.A != _harness.Earth && p.B != _harness.Earth
            )
        )
        {
            int far = unfused.FarEndOf(run);
            Reached beyond = _graph.Walk(far, state, run, throughFuses: false);
            bool passes = beyond.Lamps.Any(l => back.Reaches(l.Return) && !without.Reaches(l.Return));
            if (passes)
                Keep(
                    state,
                    run,
                    far,
                    unfused.CostTo(far) - _graph.OhmsOf(_fuse),
                    new FeedPath([], _fuse, unfused, FuseLast: true),
                    back
                );
        }

        Reached behind = _graph.Walk(frame, state, _fuse);
        Reached live = _graph.Walk(_harness.Live, state);
        foreach ((int lamp, int returns) in live.Lamps)
            if (behind.Reaches(returns))
                _lamps.Add(lamp);
    }

    // The way of a short's current: before the fuse, the fuse, and from there on; or, of a fuse in the earth lead, the
    // fuse last.
    private readonly record struct FeedPath(
        ImmutableArray<HarnessPart> Before,
        HarnessPart Fuse,
        Reached Walk,
        bool FuseLast = false
    )
    {
        public IEnumerable<HarnessPart> To(int far)
        {
            IEnumerable<HarnessPart> walked = Walk.PathTo(far);
            return FuseLast ? walked.Append(Fuse) : Before.Append(Fuse).Concat(walked);
        }
    }
}
