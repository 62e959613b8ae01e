namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>A circuit parted into the side that feeds the loads, the side that takes their current back, and the parts
/// between.</summary>
internal sealed record CircuitSides(CircuitSide Feed, CircuitSide Return, IReadOnlyList<SidePart> Between)
{
    // A way through a load is longer than any way around it.
    private const int LoadLength = 1_000_000;

    public static CircuitSides Of(CircuitGraph graph)
    {
        long[] fromSource = Distances(graph, graph.Source),
            fromEarth = Distances(graph, graph.Earth);
        bool[] feeds =
        [
            .. graph.Points.Select((_, i) => i != graph.Earth && (i == graph.Source || fromSource[i] <= fromEarth[i])),
        ];
        int[] all = [.. Enumerable.Range(0, graph.Points.Count)];
        var feed = new CircuitSide([.. all.Where(i => feeds[i]).OrderBy(i => fromSource[i])], graph.Parts);
        var back = new CircuitSide([.. all.Where(i => !feeds[i]).OrderBy(i => fromEarth[i])], graph.Parts);
        SidePart[] between =
        [
            .. graph
                .Parts.Where(p => feeds[p.From] != feeds[p.To])
                .Select(p => feeds[p.From] ? new SidePart(p, p.From, p.To) : new SidePart(p, p.To, p.From)),
        ];
        return new CircuitSides(feed, back, between);
    }

    private static long[] Distances(CircuitGraph graph, int root)
    {
        var neighbours = graph
            .Parts.SelectMany(p => new[] { (At: p.From, To: p.To, p.IsLoad), (At: p.To, To: p.From, p.IsLoad) })
            .ToLookup(n => n.At);
        long[] distances = [.. graph.Points.Select(_ => long.MaxValue)];
        var queue = new PriorityQueue<int, long>();
        distances[root] = 0;
        queue.Enqueue(root, 0);
        while (queue.TryDequeue(out int at, out long distance))
        {
            if (distance > distances[at])
                continue;
            foreach ((_, int to, bool isLoad) in neighbours[at])
            {
                long next = distance + (isLoad ? LoadLength : 1);
                if (next >= distances[to])
                    continue;
                distances[to] = next;
                queue.Enqueue(to, next);
            }
        }

        return distances;
    }
}
