using Lighting.Calc.Harness;

namespace Lighting.Calc.Network;

/// <summary>Ways through the harness from point to point.</summary>
internal static class HarnessPath
{
    /// <summary>The cheapest way between two points, or null when there is none.</summary>
    /// <param name="links">The parts to walk over.</param>
    /// <param name="from">Where the way begins.</param>
    /// <param name="to">Where it ends.</param>
    /// <param name="cost">Cost of a part, zero or more; null closes it.</param>
    /// <param name="widest">Whether the way's cost is that of its dearest part, not their sum.</param>
    /// <returns>The steps in order, each with its direction.</returns>
    public static IReadOnlyList<HarnessStep>? Cheapest(IEnumerable<HarnessLink> links, string from, string to, Func<HarnessLink, double?> cost, bool widest = false)
    {
        var open = links.Select(l => (Link: l, Cost: cost(l))).Where(l => l.Cost is not null).ToList();
        var neighbours = open.SelectMany(l => new[]
        {
            (At: l.Link.From, Step: new HarnessStep(l.Link, Forward: true), Cost: l.Cost!.Value),
            (At: l.Link.To, Step: new HarnessStep(l.Link, Forward: false), Cost: l.Cost!.Value),
        }).ToLookup(n => n.At, Name.Comparer);
        var reached = new Dictionary<string, HarnessStep?>(Name.Comparer);
        var queue = new PriorityQueue<(string Point, HarnessStep? By, double Cost, int Steps), (double Cost, int Steps)>();
        queue.Enqueue((from, null, 0, 0), (0, 0));
        while (queue.TryDequeue(out (string Point, HarnessStep? By, double Cost, int Steps) best, out _))
        {
            if (!reached.TryAdd(best.Point, best.By))
                continue;
            if (Name.Equal(best.Point, to))
                return Walk(reached, to);
            foreach ((_, HarnessStep step, double stepCost) in neighbours[best.Point])
            {
                double total = widest ? Math.Max(best.Cost, stepCost) : best.Cost + stepCost;
                queue.Enqueue((step.End, step, total, best.Steps + 1), (total, best.Steps + 1));
            }
        }

        return null;
    }

    private static List<HarnessStep> Walk(Dictionary<string, HarnessStep?> reached, string to)
    {
        var steps = new List<HarnessStep>();
        for (HarnessStep? step = reached[to]; step is not null; step = reached[step.Start])
            steps.Add(step);
        steps.Reverse();
        return steps;
    }
}
