using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Least-cost paths from one point of a harness.</summary>
/// <param name="graph">The harness.</param>
/// <param name="costs">Cost of the way to each point; infinity if there is none.</param>
/// <param name="through">The last part on the way to each point.</param>
internal sealed class Reached(HarnessGraph graph, double[] costs, HarnessPart?[] through)
{
    private ImmutableArray<(int Lamp, int Return)> _lamps;

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

    public bool Reaches(int point) => costs[point] < HarnessGraph.NoWay;

    /// <summary>Whether both ends of a part are reached.</summary>
    public bool Reaches(HarnessPart part) => Reaches(part.A) && Reaches(part.B);

    /// <summary>Whether an end of a part is reached.</summary>
    public bool Meets(HarnessPart part) => Reaches(part.A) || Reaches(part.B);

    /// <summary>The contacts that it comes to, closed or open: in states that agree in these it is the same.</summary>
    public ContactSet MetContacts() => ContactSet.Where(graph.Contacts.Length, c => Meets(graph.Contacts[c]));

    /// <summary>Cost of the way to a point; infinity if there is none.</summary>
    public double CostTo(int point) => costs[point];

    /// <summary>The end of a part that lies farther away.</summary>
    public int FarEndOf(HarnessPart part) => costs[part.A] > costs[part.B] ? part.A : part.B;

    /// <summary>The parts on the way to a point, in order; none to the start and to points that are not
    /// reached.</summary>
    public ImmutableArray<HarnessPart> PathTo(int point)
    {
        var parts = ImmutableArray.CreateBuilder<HarnessPart>();
        for (int at = point; through[at] is { } part; at = part.Other(at))
            parts.Add(part);
        parts.Reverse();
        return parts.DrainToImmutable();
    }

    private ImmutableArray<(int Lamp, int Return)> FedLamps()
    {
        var lamps = ImmutableArray.CreateBuilder<(int Lamp, int Return)>();
        foreach (HarnessPart lamp in graph.Lamps)
        {
            if (Reaches(lamp.A))
                lamps.Add((lamp.Index, lamp.B));
            else if (lamp.B != graph.Earth && Reaches(lamp.B))
                lamps.Add((lamp.Index, lamp.A));
        }

        return lamps.DrainToImmutable();
    }
}
