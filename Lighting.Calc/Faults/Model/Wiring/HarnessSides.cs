using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>The live side and the earth side of the loads, and the fuse before a point.</summary>
internal sealed class HarnessSides
{
    private const string FrameName = "frame";

    private readonly Bike _bike;
    private readonly HarnessGraph _graph;
    private readonly Reached _live;
    private readonly Reached _earth;
    private readonly int[] _section;
    private ImmutableArray<int> _sections;

    public HarnessSides(Bike bike, HarnessGraph graph)
    {
        _bike = bike;
        _graph = graph;
        _live = graph.From(graph.Live, PastLamps);
        _earth = graph.From(graph.Earth, PastLamps);
        int frame = graph.NumberOf(FrameName);
        _section = [.. graph.Points.Select((_, p) => IsLive(graph.Points[p]) ? p : -1)];
        foreach (HarnessPart run in graph.Runs)
            if (_section[run.A] is >= 0 and var a && _section[run.B] is >= 0 and var b)
                for (int p = 0; p < _section.Length; p++)
                    if (_section[p] == b)
                        _section[p] = a;
        Frame = frame >= 0 && _earth.Reaches(frame) ? graph.Points[frame] : bike.EarthPoint;
    }

    /// <summary>The frame: the point of that name, or the battery terminal that is joined to it.</summary>
    public string Frame { get; }

    public bool IsLive(string point) =>
        _graph.NumberOf(point) is >= 0 and var number && _live.Reaches(number) && !_earth.Reaches(number);

    /// <summary>One point of each section of the live side: what runs join, without a contact or fuse between; a lamp's
    /// feed where there is one.</summary>
    public ImmutableArray<int> Sections =>
        _sections.IsDefault
            ? _sections = [.. _section.Distinct().Where(s => s >= 0).Select(Representative)]
            : _sections;

    /// <summary>Whether a point is live with every switch off.</summary>
    public bool IsAlwaysLive(int point) =>
        _graph
            .From(_graph.Live, p => p.Kind is HarnessPartKind.Run or HarnessPartKind.Fuse ? 1 : HarnessGraph.NoWay)
            .Reaches(point);

    /// <summary>Whether two sections are of two circuits that can touch: neither is the battery's, and no contact or
    /// fuse joins them, which would be that part's fault.</summary>
    public bool MayTouch(int a, int b)
    {
        int first = _section[a],
            second = _section[b],
            battery = _section[_graph.Live];
        return first != second
            && first != battery
            && second != battery
            && !_graph
                .Contacts.Concat(_graph.Fuses)
                .Any(p =>
                    _section[p.A] == first && _section[p.B] == second
                    || _section[p.A] == second && _section[p.B] == first
                );
    }

    public bool IsEarth(int run) => _earth.Reaches(_graph.Runs[run]);

    /// <summary>The fuse that a short at a point blows: the smallest on the way to it; null if there is none.</summary>
    public int? FuseBefore(string point) =>
        _live
            .PathTo(_graph.NumberOf(point))
            .Where(p => p.Kind == HarnessPartKind.Fuse)
            .OrderBy(p => _bike.Fuses[p.Index].Rating.Amperes)
            .Select(p => (int?)p.Index)
            .FirstOrDefault();

    private int Representative(int section)
    {
        int[] points = [.. Enumerable.Range(0, _section.Length).Where(p => _section[p] == section)];
        int feed = Array.FindIndex(points, p => _graph.Lamps.Any(l => l.A == p));
        return points[Math.Max(0, feed)];
    }

    // Whatever the switches: open contacts count as closed, lamps do not lead on.
    private static double PastLamps(HarnessPart part) => part.Kind == HarnessPartKind.Lamp ? HarnessGraph.NoWay : 1;
}
