namespace Lighting.Calc;

/// <summary>The live side and the earth side of the loads, and the fuse before a point.</summary>
internal sealed class HarnessSides
{
    private const string FrameName = "frame";

    private readonly Bike _bike;
    private readonly HarnessGraph _graph;
    private readonly Reached _live;
    private readonly Reached _earth;

    public HarnessSides(Bike bike, HarnessGraph graph)
    {
        _bike = bike;
        _graph = graph;
        _live = graph.From(graph.Live, PastLamps);
        _earth = graph.From(graph.Earth, PastLamps);
        int frame = graph.NumberOf(FrameName);
        Frame = frame >= 0 && _earth.Reaches(frame) ? graph.Points[frame] : bike.EarthPoint;
    }

    /// <summary>The frame: the point of that name, or the battery terminal that is joined to it.</summary>
    public string Frame { get; }

    public bool IsLive(string point) =>
        _graph.NumberOf(point) is >= 0 and var number && _live.Reaches(number) && !_earth.Reaches(number);

    public bool IsEarth(int run) => _earth.Reaches(_graph.Runs[run]);

    /// <summary>The fuse that a short at a point blows: the smallest on the way to it; null if there is none.</summary>
    public int? FuseBefore(string point) =>
        _live
            .PathTo(_graph.NumberOf(point))
            .Where(p => p.Kind == HarnessPartKind.Fuse)
            .OrderBy(p => _bike.Fuses[p.Index].Rating.Amperes)
            .Select(p => (int?)p.Index)
            .FirstOrDefault();

    // Whatever the switches: open contacts count as closed, lamps do not lead on.
    private static double PastLamps(HarnessPart part) => part.Kind == HarnessPartKind.Lamp ? HarnessGraph.NoWay : 1;
}
