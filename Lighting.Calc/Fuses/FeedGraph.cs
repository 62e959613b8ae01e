using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Fuses;

/// <summary>A bike's runs, contacts and fuses as a graph that is walked from the battery.</summary>
/// <remarks>Walks never lead through a battery terminal, and never through a lamp: a dead short does not pass one.</remarks>
internal sealed class FeedGraph
{
    private readonly Dictionary<string, int> _points = new(Name.Comparer);
    private readonly List<string> _names = [];
    private readonly ImmutableArray<ImmutableArray<int>> _partsAt;

    public FeedGraph(Bike bike)
    {
        Bike = bike;
        Live = Point(bike.LivePoint);
        Earth = Point(bike.EarthPoint);
        var parts = ImmutableArray.CreateBuilder<GraphPart>();
        for (int i = 0; i < bike.Runs.Length; i++)
        {
            Run run = bike.Runs[i];
            parts.Add(new(GraphPartKind.Run, i, run.Name, Point(run.From), Point(run.To), (run.WireResistance(bike.WireTemperature) + run.TotalJointResistance).Ohms));
        }

        for (int i = 0; i < bike.Switches.Length; i++)
            parts.Add(new(GraphPartKind.Contact, i, bike.Switches[i].Name, Point(bike.Switches[i].From), Point(bike.Switches[i].To), bike.Switches[i].Resistance.Ohms));
        for (int i = 0; i < bike.Fuses.Length; i++)
            if (bike.Fuses[i] is { From: { } from, To: { } to } fuse)
                parts.Add(new(GraphPartKind.Fuse, i, fuse.Name, Point(from), Point(to), FuseTable.ResistanceOf(fuse).Ohms));
        LampFeeds = [.. bike.Lamps.Select(l => l.Feed is { } p ? Point(p) : -1)];
        LampReturns = [.. bike.Lamps.Select(l => l.Return is { } p ? Point(p) : -1)];
        Parts = parts.ToImmutable();
        var at = Enumerable.Range(0, _names.Count).Select(_ => ImmutableArray.CreateBuilder<int>()).ToArray();
        for (int i = 0; i < Parts.Length; i++)
        {
            at[Parts[i].A].Add(i);
            if (Parts[i].B != Parts[i].A)
                at[Parts[i].B].Add(i);
        }

        _partsAt = [.. at.Select(a => a.ToImmutable())];
    }

    public Bike Bike { get; }

    public ImmutableArray<GraphPart> Parts { get; }

    /// <summary>Feed point of each lamp; −1 where the list names none.</summary>
    public ImmutableArray<int> LampFeeds { get; }

    /// <summary>Return point of each lamp; −1 where the list names none.</summary>
    public ImmutableArray<int> LampReturns { get; }

    public int Live { get; }

    public int Earth { get; }

    /// <summary>Whether a fuse's resistance is listed or published.</summary>
    public static bool KnowsOhms(Fuse fuse) =>
        fuse.Resistance is not null || FuseTable.Of(fuse.Style).Any(f => Math.Abs(f.Rating.Amperes - fuse.Rating.Amperes) < 1e-9 && f.ColdResistance is not null);

    public string PointName(int point) => _names[point];

    /// <summary>The distinct sets of closed contacts among settings, contacts that no walk from the battery comes to left out.</summary>
    public ImmutableArray<FeedState> States(IEnumerable<Setting> settings)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var states = ImmutableArray.CreateBuilder<FeedState>();
        foreach (Setting setting in settings)
        {
            FeedState state = StateOf(setting);
            FeedWalk live = Walk(Live, state, _ => true), earth = Walk(Earth, state, _ => true);
            if (seen.Add(string.Create(Parts.Length, (this, state, live, earth), Mark)))
                states.Add(state);
        }

        return states.ToImmutable();

        static void Mark(Span<char> marks, (FeedGraph Graph, FeedState State, FeedWalk Live, FeedWalk Earth) of)
        {
            for (int i = 0; i < marks.Length; i++)
            {
                GraphPart part = of.Graph.Parts[i];
                bool isMet = of.Live.Reaches(part.A) || of.Live.Reaches(part.B) || of.Earth.Reaches(part.A) || of.Earth.Reaches(part.B);
                marks[i] = isMet && of.State.Passes[i] ? '1' : '0';
            }
        }
    }

    public FeedState StateOf(Setting setting) =>
        new(setting, [.. Parts.Select(p => p.Kind != GraphPartKind.Contact || Bike.Switches[p.Index].IsClosed(setting))]);

    /// <summary>Walks from a point over the parts that pass current and that <paramref name="usable"/> allows.</summary>
    public FeedWalk Walk(int start, FeedState state, Func<GraphPart, bool> usable)
    {
        double[] ohms = new double[_names.Count];
        int[] through = new int[_names.Count];
        Array.Fill(ohms, double.PositiveInfinity);
        Array.Fill(through, -1);
        ohms[start] = 0;
        var queue = new PriorityQueue<int, double>();
        queue.Enqueue(start, 0);
        while (queue.TryDequeue(out int point, out double reached))
        {
            if (reached > ohms[point] || point != start && (point == Live || point == Earth))
                continue;
            foreach (int index in _partsAt[point])
            {
                GraphPart part = Parts[index];
                if (!state.Passes[index] || !usable(part))
                    continue;
                int next = part.Other(point);
                double candidate = reached + part.Ohms;
                if (candidate < ohms[next])
                {
                    ohms[next] = candidate;
                    through[next] = index;
                    queue.Enqueue(next, candidate);
                }
            }
        }

        return new FeedWalk(this, ohms, through);
    }

    private int Point(string name)
    {
        if (!_points.TryGetValue(name, out int index))
        {
            index = _names.Count;
            _points.Add(name, index);
            _names.Add(name);
        }

        return index;
    }
}
