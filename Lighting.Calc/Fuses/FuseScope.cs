using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Fuses;

/// <summary>What one fuse feeds, over all settings: runs up to the next fuse, lamps, and the runs their current returns by.</summary>
/// <remarks>
/// A fuse in the earth lead (neither side reached from the live terminal) is passed by a short to the frame on its way back;
/// it protects the runs that no fuse in the feed protects and whose lamps return through it.
/// </remarks>
internal sealed class FuseScope
{
    private readonly FeedGraph _graph;
    private readonly int _fuse;
    private readonly SortedDictionary<int, FedRun> _runs = [];
    // Of each run the ohms of its dead short so far; below zero where there is none.
    private readonly double[] _mostOhms;
    private readonly HashSet<int> _lamps = [];
    private readonly HashSet<int> _returnRuns = [];
    private readonly HashSet<(int Lamp, FeedWalk Back)> _returned = [];

    private FuseScope(FeedGraph graph, int fuse)
    {
        _graph = graph;
        _fuse = fuse;
        _mostOhms = new double[graph.RunParts.Length];
        Array.Fill(_mostOhms, -1);
    }

    /// <summary>The runs that it feeds, by their index in the bike's list.</summary>
    public IReadOnlyDictionary<int, FedRun> Runs => _runs;

    /// <summary>Indices of the lamps whose current passes the fuse in some setting.</summary>
    public IReadOnlySet<int> Lamps => _lamps;

    /// <summary>The runs, by index, that only carry the current of its lamps back.</summary>
    public IReadOnlySet<int> ReturnRuns => _returnRuns;

    /// <summary>Whether it is in the earth lead.</summary>
    public bool IsEarthSide { get; private set; }

    /// <summary>Whether any setting reaches it from the battery.</summary>
    public bool IsFed { get; private set; }

    /// <summary>A setting in which both of its sides are joined to the live terminal without a fuse; null when there is none.</summary>
    public Setting? Bypassed { get; private set; }

    public static FuseScope Of(FeedGraph graph, int fuse, ImmutableArray<FeedState> states, CancellationToken cancellation = default)
    {
        var scope = new FuseScope(graph, fuse);
        foreach (FeedState state in states)
        {
            cancellation.ThrowIfCancellationRequested();
            scope.AddFeedSide(state);
        }

        foreach (FeedState state in scope.IsFed ? [] : states)
        {
            cancellation.ThrowIfCancellationRequested();
            scope.AddEarthSide(state);
        }

        return scope;
    }

    private GraphPart? Part => field ??= _graph.Parts.FirstOrDefault(p => p.Kind == GraphPartKind.Fuse && p.Index == _fuse);

    private void AddFeedSide(FeedState state)
    {
        if (Part is not { } part)
            return;
        FeedWalk feed = _graph.Walk(_graph.Live, state, part);
        int supply = feed.Reaches(part.A) ? part.A : part.B, load = part.Other(supply);
        if (!feed.Reaches(supply))
            return;
        IsFed = true;
        FeedWalk unfused = _graph.Walk(_graph.Live, state, throughFuses: false);
        if (unfused.Reaches(part.A) && unfused.Reaches(part.B))
            Bypassed ??= state.Setting;
        FeedWalk own = _graph.Walk(load, state, throughFuses: false);
        FeedWalk back = _graph.Walk(_graph.Earth, state);
        AddRuns(state, own, unfused, feed.OhmsTo(supply), feed.PathTo(supply), part, back);
        // With no other fuse the two walks are one.
        AddLamps(_graph.Bike.Fuses.Length == 1 ? own : _graph.Walk(load, state, part), unfused, back);
    }

    private void AddRuns(FeedState state, FeedWalk own, FeedWalk unfused, double ohmsBefore, ImmutableArray<GraphPart> pathBefore, GraphPart fuse, FeedWalk back)
    {
        foreach (GraphPart run in _graph.RunParts)
        {
            if (!own.Reaches(run.A) || !own.Reaches(run.B) || run.A == _graph.Live || run.B == _graph.Live || run.A == _graph.Earth || run.B == _graph.Earth || unfused.Reaches(run.A))
                continue;
            int far = own.OhmsTo(run.A) > own.OhmsTo(run.B) ? run.A : run.B;
            Keep(state, run, far, ohmsBefore + own.OhmsTo(far), new FeedPath(pathBefore, fuse, own), back);
        }
    }

    private void Keep(FeedState state, GraphPart run, int far, double feedOhms, FeedPath path, FeedWalk back)
    {
        // Where the short meets the frame is not known; the return of the lamp beyond it that is worst off is taken.
        FeedWalk beyond = _graph.Walk(far, state, run, throughFuses: false);
        double returnOhms = 0;
        int from = -1;
        foreach ((_, int point) in beyond.Lamps)
        {
            if (back.Reaches(point) && (from < 0 || back.OhmsTo(point) > returnOhms))
                (returnOhms, from) = (back.OhmsTo(point), point);
        }

        if (feedOhms + returnOhms <= _mostOhms[run.Index])
            return;
        _mostOhms[run.Index] = feedOhms + returnOhms;
        _runs[run.Index] = new FedRun(_graph.Bike.Runs[run.Index], _graph.PointName(far), feedOhms, returnOhms, from < 0 ? null : _graph.PointName(from), path.NamesTo(far), state.Setting);
    }

    private void AddLamps(FeedWalk reached, FeedWalk unfused, FeedWalk back)
    {
        foreach ((int lamp, int returns) in reached.Lamps)
        {
            if (unfused.Feeds(lamp))
                continue;
            _lamps.Add(lamp);
            if (!back.Reaches(returns) || !_returned.Add((lamp, back)))
                continue;
            foreach (GraphPart part in back.PathTo(returns))
                if (part.Kind == GraphPartKind.Run)
                    _returnRuns.Add(part.Index);
        }
    }

    private void AddEarthSide(FeedState state)
    {
        if (Part is not { } part)
            return;
        FeedWalk back = _graph.Walk(_graph.Earth, state), without = _graph.Walk(_graph.Earth, state, part);
        int frame = without.Reaches(part.A) ? part.B : part.A;
        if (without.Reaches(part.A) == without.Reaches(part.B))
            return;
        IsEarthSide = true;
        FeedWalk unfused = _graph.Walk(_graph.Live, state, throughFuses: false);
        foreach (GraphPart run in _graph.Parts.Where(p => p.Kind == GraphPartKind.Run && unfused.Reaches(p.A) && unfused.Reaches(p.B) && p.A != _graph.Earth && p.B != _graph.Earth))
        {
            int far = unfused.OhmsTo(run.A) > unfused.OhmsTo(run.B) ? run.A : run.B;
            FeedWalk beyond = _graph.Walk(far, state, run, throughFuses: false);
            bool passes = beyond.Lamps.Any(l => back.Reaches(l.Return) && !without.Reaches(l.Return));
            if (passes)
                Keep(state, run, far, unfused.OhmsTo(far) - part.Ohms, new FeedPath([], part, unfused, FuseLast: true), back);
        }

        FeedWalk behind = _graph.Walk(frame, state, part);
        FeedWalk live = _graph.Walk(_graph.Live, state);
        foreach ((int lamp, int returns) in live.Lamps)
            if (behind.Reaches(returns))
                _lamps.Add(lamp);
    }

    // The way of a short's current: before the fuse, the fuse, and from there on; or, of a fuse in the earth lead, the fuse last.
    private readonly record struct FeedPath(ImmutableArray<GraphPart> Before, GraphPart Fuse, FeedWalk Walk, bool FuseLast = false)
    {
        public ImmutableArray<string> NamesTo(int far)
        {
            IEnumerable<GraphPart> walked = Walk.PathTo(far);
            return [.. (FuseLast ? walked.Append(Fuse) : Before.Append(Fuse).Concat(walked)).Select(p => p.Name)];
        }
    }
}
