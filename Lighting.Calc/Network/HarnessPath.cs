using Lighting.Calc.Harness;

namespace Lighting.Calc.Network;

/// <summary>Ways through the harness from point to point.</summary>
internal sealed class HarnessPath
{
    private readonly Dictionary<string, int> _points = new(Name.Comparer);
    private readonly List<List<(int End, HarnessStep Step)>> _steps = [];

    /// <param name="links">The parts to walk over.</param>
    public HarnessPath(IEnumerable<HarnessLink> links)
    {
        foreach (HarnessLink link in links)
        {
            int from = PointOf(link.From), to = PointOf(link.To);
            _steps[from].Add((to, new HarnessStep(link, Forward: true)));
            _steps[to].Add((from, new HarnessStep(link, Forward: false)));
        }
    }

    /// <summary>The cheapest way between two points over some parts; see <see cref="Cheapest(string, string, Func{HarnessLink, double?}, bool)"/>.</summary>
    public static IReadOnlyList<HarnessStep>? Cheapest(IEnumerable<HarnessLink> links, string from, string to, Func<HarnessLink, double?> cost) =>
        new HarnessPath(links).Cheapest(from, to, cost);

    /// <summary>The cheapest way between two points, or null when there is none.</summary>
    /// <param name="from">Where the way begins.</param>
    /// <param name="to">Where it ends.</param>
    /// <param name="cost">Cost of a part, zero or more; null closes it.</param>
    /// <param name="widest">Whether the way's cost is that of its dearest part, not their sum.</param>
    /// <returns>The steps in order, each with its direction.</returns>
    public IReadOnlyList<HarnessStep>? Cheapest(string from, string to, Func<HarnessLink, double?> cost, bool widest = false)
    {
        if (Name.Equal(from, to))
            return [];
        if (!_points.TryGetValue(from, out int start) || !_points.TryGetValue(to, out int end))
            return null;
        var reachedBy = new (int Before, HarnessStep? Step)[_steps.Count];
        var isReached = new bool[_steps.Count];
        var queue = new PriorityQueue<(int Point, int Before, HarnessStep? By, double Cost, int Steps), (double Cost, int Steps)>(_steps.Count);
        queue.Enqueue((start, start, null, 0, 0), (0, 0));
        while (queue.TryDequeue(out (int Point, int Before, HarnessStep? By, double Cost, int Steps) best, out _))
        {
            if (isReached[best.Point])
                continue;
            isReached[best.Point] = true;
            reachedBy[best.Point] = (best.Before, best.By);
            if (best.Point == end)
                return Walk(reachedBy, end);
            foreach ((int next, HarnessStep step) in _steps[best.Point])
            {
                if (isReached[next] || cost(step.Link) is not { } stepCost)
                    continue;
                double total = widest ? Math.Max(best.Cost, stepCost) : best.Cost + stepCost;
                queue.Enqueue((next, best.Point, step, total, best.Steps + 1), (total, best.Steps + 1));
            }
        }

        return null;
    }

    private int PointOf(string name)
    {
        if (!_points.TryGetValue(name, out int point))
        {
            _points.Add(name, point = _steps.Count);
            _steps.Add(new(2));
        }

        return point;
    }

    private static List<HarnessStep> Walk((int Before, HarnessStep? Step)[] reachedBy, int end)
    {
        var steps = new List<HarnessStep>();
        for (int at = end; reachedBy[at].Step is { } step; at = reachedBy[at].Before)
            steps.Add(step);
        steps.Reverse();
        return steps;
    }
}
