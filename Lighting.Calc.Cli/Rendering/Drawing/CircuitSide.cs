namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>One side of a circuit, from the source (or from earth) to the loads: its points in layers, and the tree
/// they hang in.</summary>
/// <remarks>
/// Points are ordered by their distance from the root, every part within the side points from the nearer to the
/// farther end, and a point's layer is the longest way to it: so the two ends of a part never share a layer. Each
/// point hangs on the part that comes from its highest neighbour; other parts close loops.
/// </remarks>
internal sealed class CircuitSide
{
    public CircuitSide(IReadOnlyList<int> pointsByDistance, IReadOnlyList<CircuitPart> parts)
    {
        Points = pointsByDistance;
        var place = pointsByDistance.Select((p, i) => (p, i)).ToDictionary(x => x.p, x => x.i);
        ILookup<int, SidePart> arriving = parts
            .Where(p => place.ContainsKey(p.From) && place.ContainsKey(p.To))
            .Select(p => place[p.From] < place[p.To] ? new SidePart(p, p.From, p.To) : new SidePart(p, p.To, p.From))
            .ToLookup(p => p.Far);
        foreach (int point in pointsByDistance)
        {
            SidePart[] into = [.. arriving[point].OrderByDescending(p => Layer[p.Near])];
            Layer[point] = into.Length == 0 ? 0 : Layer[into[0].Near] + 1;
            if (into.Length > 0)
                Hung.Add(point, into[0]);
            Loops.AddRange(into.Skip(1));
        }
    }

    /// <summary>The points, the root first.</summary>
    public IReadOnlyList<int> Points { get; }

    /// <summary>The layer of each point, 0 at the root.</summary>
    public Dictionary<int, int> Layer { get; } = [];

    /// <summary>The part each point hangs on; roots hang on none.</summary>
    public Dictionary<int, SidePart> Hung { get; } = [];

    /// <summary>The parts that close loops.</summary>
    public List<SidePart> Loops { get; } = [];

    /// <summary>How many layers there are.</summary>
    public int Layers => Layer.Count == 0 ? 0 : Layer.Values.Max() + 1;
}

/// <summary>A part within a side.</summary>
/// <param name="Part">The part.</param>
/// <param name="Near">Its end nearer to the root.</param>
/// <param name="Far">Its other end.</param>
internal sealed record SidePart(CircuitPart Part, int Near, int Far);
