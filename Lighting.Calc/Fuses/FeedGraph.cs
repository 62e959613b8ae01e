using System.Collections.Immutable;
using Lighting.Calc.Harness;
using Lighting.Calc.Network;

namespace Lighting.Calc.Fuses;

/// <summary>A bike's runs, contacts and fuses as a graph that is walked from the battery.</summary>
/// <remarks>
/// Walks never lead through a battery terminal, and never through a lamp: a dead short does not pass one. A walk is done once and
/// kept for all states that agree in the contacts it comes to. For one thread at a time.
/// </remarks>
internal sealed class FeedGraph
{
    private readonly Dictionary<string, int> _points = new(Name.Comparer);
    private readonly List<string> _names = [];
    private readonly int[][] _partsAt;
    private readonly int _firstContact;
    // By start, part left out and whether fuses are walked over, as one number; then by the contacts that a walk comes to, of which
    // there are few sets, and by those of them that are closed.
    private readonly Dictionary<int, List<(ContactSet Met, Dictionary<ContactSet, FeedWalk> ByClosed)>> _walks = [];
    private readonly Queue<int> _queue = new();

    public FeedGraph(Bike bike)
    {
        Bike = bike;
        Live = Point(bike.LivePoint);
        Earth = Point(bike.EarthPoint);
        var parts = ImmutableArray.CreateBuilder<GraphPart>();
        for (int i = 0; i < bike.Runs.Length; i++)
        {
            Run run = bike.Runs[i];
            parts.Add(new(parts.Count, GraphPartKind.Run, i, run.Name, Point(run.From), Point(run.To), (run.WireResistance(bike.WireTemperature) + run.TotalJointResistance).Ohms));
        }

        _firstContact = parts.Count;
        for (int i = 0; i < bike.Switches.Length; i++)
            parts.Add(new(parts.Count, GraphPartKind.Contact, i, bike.Switches[i].Name, Point(bike.Switches[i].From), Point(bike.Switches[i].To), bike.Switches[i].Resistance.Ohms));
        for (int i = 0; i < bike.Fuses.Length; i++)
            if (bike.Fuses[i] is { From: { } from, To: { } to } fuse)
                parts.Add(new(parts.Count, GraphPartKind.Fuse, i, fuse.Name, Point(from), Point(to), FuseTable.ResistanceOf(fuse).Ohms));
        LampFeeds = [.. bike.Lamps.Select(l => l.Feed is { } p ? Point(p) : -1)];
        LampReturns = [.. bike.Lamps.Select(l => l.Return is { } p ? Point(p) : -1)];
        Parts = parts.ToImmutable();
        List<int>[] at = [.. _names.Select(_ => new List<int>(4))];
        for (int i = 0; i < Parts.Length; i++)
        {
            at[Parts[i].A].Add(i);
            if (Parts[i].B != Parts[i].A)
                at[Parts[i].B].Add(i);
        }

        _partsAt = [.. at.Select(a => a.ToArray())];
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

    public GraphPart ContactPart(int contact) => Parts[_firstContact + contact];

    /// <summary>The runs, in the order of the list.</summary>
    public ReadOnlySpan<GraphPart> RunParts => Parts.AsSpan(0, _firstContact);

    /// <summary>The states of groups of settings.</summary>
    public static ImmutableArray<FeedState> States(SettingGroups groups) => [.. groups.First.Zip(groups.Closed, (setting, closed) => new FeedState(setting, closed))];

    /// <summary>Walks from a point over the parts that pass current.</summary>
    /// <param name="start">The point.</param>
    /// <param name="state">Which contacts are closed.</param>
    /// <param name="without">A part that is left out; null for none.</param>
    /// <param name="throughFuses">Whether fuses are walked over.</param>
    public FeedWalk Walk(int start, FeedState state, GraphPart? without = null, bool throughFuses = true)
    {
        int key = 2 * ((Parts.Length + 1) * start + (without?.Place ?? Parts.Length)) + (throughFuses ? 1 : 0);
        if (!_walks.TryGetValue(key, out var known))
            _walks.Add(key, known = []);
        foreach ((ContactSet met, Dictionary<ContactSet, FeedWalk> byClosed) in known)
            if (byClosed.TryGetValue(state.Closed.And(met), out FeedWalk? walk))
                return walk;
        FeedWalk fresh = Walked(start, state, without, throughFuses);
        int place = known.FindIndex(k => k.Met.Equals(fresh.Met));
        if (place < 0)
        {
            place = known.Count;
            known.Add((fresh.Met, []));
        }

        known[place].ByClosed.Add(state.Closed.And(fresh.Met), fresh);
        return fresh;
    }

    private FeedWalk Walked(int start, FeedState state, GraphPart? without, bool throughFuses)
    {
        double[] ohms = new double[_names.Count];
        int[] through = new int[_names.Count];
        Array.Fill(ohms, double.PositiveInfinity);
        Array.Fill(through, -1);
        ohms[start] = 0;
        // Harnesses are nearly trees: a point is seldom reached again by a better way and queued anew.
        _queue.Enqueue(start);
        while (_queue.TryDequeue(out int point))
        {
            if (point != start && (point == Live || point == Earth))
                continue;
            foreach (int place in _partsAt[point])
            {
                GraphPart part = Parts[place];
                if (ReferenceEquals(part, without) || part.Kind == GraphPartKind.Fuse && !throughFuses || part.Kind == GraphPartKind.Contact && !state.Closed.Has(part.Index))
                    continue;
                int next = part.Other(point);
                double candidate = ohms[point] + part.Ohms;
                if (candidate < ohms[next])
                {
                    ohms[next] = candidate;
                    through[next] = place;
                    _queue.Enqueue(next);
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
