using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Fuses;

/// <summary>The way of least resistance from one point to every point it reaches.</summary>
internal sealed class FeedWalk
{
    private readonly FeedGraph _graph;
    private readonly double[] _ohms;
    private readonly int[] _through;

    private ImmutableArray<(int Lamp, int Return)> _lamps;

    /// <param name="graph">The bike as a graph.</param>
    /// <param name="ohms">Ohms to each point; infinity where it is not reached.</param>
    /// <param name="through">The part by which each point is reached; −1 for none.</param>
    public FeedWalk(FeedGraph graph, double[] ohms, int[] through)
    {
        (_graph, _ohms, _through) = (graph, ohms, through);
        Met = ContactSet.Where(graph.Bike.Switches.Length, c => Reaches(graph.ContactPart(c).A) || Reaches(graph.ContactPart(c).B));
    }

    /// <summary>The lamps that are fed where it reaches, each with the point by which its current leaves.</summary>
    /// <remarks>A lamp is fed where one of its sides is reached; its current then leaves by the other.</remarks>
    public ImmutableArray<(int Lamp, int Return)> Lamps => _lamps.IsDefault ? _lamps = FedLamps() : _lamps;

    /// <summary>Whether a lamp is one of <see cref="Lamps"/>.</summary>
    public bool Feeds(int lamp)
    {
        foreach ((int fed, _) in Lamps)
            if (fed == lamp)
                return true;
        return false;
    }

    /// <summary>The contacts that it comes to, closed or open: in states that agree in these it is the same.</summary>
    public ContactSet Met { get; }

    /// <summary>Ohms to a point; infinity where it is not reached.</summary>
    public double OhmsTo(int point) => _ohms[point];

    public bool Reaches(int point) => double.IsFinite(_ohms[point]);

    private ImmutableArray<(int Lamp, int Return)> FedLamps()
    {
        var lamps = ImmutableArray.CreateBuilder<(int Lamp, int Return)>();
        for (int i = 0; i < _graph.LampFeeds.Length; i++)
        {
            int feed = _graph.LampFeeds[i], returns = _graph.LampReturns[i];
            if (feed < 0 || returns < 0)
                continue;
            if (Reaches(feed))
                lamps.Add((i, returns));
            else if (returns != _graph.Earth && Reaches(returns))
                lamps.Add((i, feed));
        }

        return lamps.DrainToImmutable();
    }

    /// <summary>The parts passed on the way to a point, in order.</summary>
    public ImmutableArray<GraphPart> PathTo(int point)
    {
        var parts = ImmutableArray.CreateBuilder<GraphPart>();
        for (int at = point; _through[at] >= 0;)
        {
            GraphPart part = _graph.Parts[_through[at]];
            parts.Add(part);
            at = part.Other(at);
        }

        parts.Reverse();
        return parts.ToImmutable();
    }
}
