using Lighting.Calc.Harness;
using Lighting.Calc.Network;

namespace Lighting.Calc.FaultFinding;

/// <summary>Which points lie on the live side of the loads, which on the earth side, and which fuse feeds a point.</summary>
internal sealed class HarnessSides
{
    private const string FrameName = "frame";

    private readonly HashSet<string> _live;
    private readonly HashSet<string> _earth;
    private readonly HarnessLink[] _links;
    private readonly Bike _bike;

    public HarnessSides(Bike bike)
    {
        _bike = bike;
        _links = [.. HarnessLink.Of(bike)];
        _live = Reach(bike.LivePoint);
        _earth = Reach(bike.EarthPoint);
        Frame = _earth.FirstOrDefault(p => Name.Equal(p, FrameName)) ?? bike.EarthPoint;
    }

    /// <summary>The frame: the point of that name, or the battery terminal that is joined to it.</summary>
    public string Frame { get; }

    public bool IsLive(string point) => _live.Contains(point) && !_earth.Contains(point);

    public bool IsEarth(Run run) => _earth.Contains(run.From) && _earth.Contains(run.To);

    /// <summary>The fuse that a short at a point blows: the smallest on the way to it; null where there is none.</summary>
    public int? FuseBefore(string point)
    {
        IReadOnlyList<HarnessStep> way = HarnessPath.Cheapest(_links, _bike.LivePoint, point, _ => 1) ?? [];
        return way.Where(s => s.Link.Kind == HarnessLinkKind.Fuse)
            .OrderBy(s => _bike.Fuses[s.Link.Index].Rating.Amperes)
            .Select(s => (int?)s.Link.Index)
            .FirstOrDefault();
    }

    private HashSet<string> Reach(string start)
    {
        var reached = new HashSet<string>(Name.Comparer) { start };
        var queue = new Queue<string>([start]);
        while (queue.TryDequeue(out string? point))
            foreach (HarnessLink link in _links)
            {
                if (Name.Equal(link.From, point) && reached.Add(link.To))
                    queue.Enqueue(link.To);
                if (Name.Equal(link.To, point) && reached.Add(link.From))
                    queue.Enqueue(link.From);
            }

        return reached;
    }
}
