using System.Collections.Immutable;

namespace Lighting.Calc.Fuses;

/// <summary>The way of least resistance from one point to every point it reaches.</summary>
internal sealed class FeedWalk(FeedGraph graph, double[] ohms, int[] through)
{
    /// <summary>Ohms to a point; infinity where it is not reached.</summary>
    public double OhmsTo(int point) => ohms[point];

    public bool Reaches(int point) => double.IsFinite(ohms[point]);

    /// <summary>The parts passed on the way to a point, in order.</summary>
    public ImmutableArray<GraphPart> PathTo(int point)
    {
        var parts = ImmutableArray.CreateBuilder<GraphPart>();
        for (int at = point; through[at] >= 0;)
        {
            GraphPart part = graph.Parts[through[at]];
            parts.Add(part);
            at = part.Other(at);
        }

        parts.Reverse();
        return parts.ToImmutable();
    }
}
