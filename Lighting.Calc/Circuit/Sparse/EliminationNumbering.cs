// The places of a plan in its matrix; made only when the plan is solved.
namespace Lighting.Calc;

/// <summary>One slot for each unknown in order of elimination, the plus last, then the reference node; and the places
/// of elements in the matrix.</summary>
internal sealed class EliminationNumbering
{
    /// <param name="circuit">The circuit.</param>
    /// <param name="plan">The plan that is numbered.</param>
    /// <param name="cluster">For each node the lowest node that zero resistance joins it with.</param>
    internal EliminationNumbering(Circuit circuit, EliminationPlan plan, int[] cluster)
    {
        int count = plan.Unknowns,
            plus = cluster[circuit.Plus],
            minus = cluster[circuit.Minus];
        int edges = plan.LiveConductors.Length + plan.LiveLoads.Length,
            needed = circuit.NodeCount + 2 * edges;
        Span<int> room = needed <= Scratch.OnStack ? stackalloc int[needed] : new int[needed];
        var scratch = new Scratch(room);
        Span<int> slotOf = scratch.Take(circuit.NodeCount, count),
            ends = scratch.Take(edges),
            otherEnds = scratch.Take(edges);
        NodeOfSlot = new int[count + 1];
        NodeOfSlot[count] = circuit.Minus;
        int slot = 0;
        // The circuit's order serves every part of it: a part has no more fill in it than the whole.
        foreach (int v in circuit.Order)
        {
            if (plan.Anchor[v] != v || v == minus || v == plus)
                continue;
            NodeOfSlot[slot] = v;
            slotOf[v] = slot++;
        }

        if (plus != minus)
        {
            NodeOfSlot[slot] = plus;
            slotOf[plus] = slot;
        }

        Slot = new int[circuit.NodeCount];
        for (int v = 0; v < Slot.Length; v++)
            Slot[v] = slotOf[plan.Anchor[v]];
        int edge = 0;
        foreach (int i in plan.LiveConductors)
            (ends[edge], otherEnds[edge++]) = (Slot[circuit.ConductorA[i]], Slot[circuit.ConductorB[i]]);
        foreach (int i in plan.LiveLoads)
            (ends[edge], otherEnds[edge++]) = (Slot[circuit.LoadFeed[i]], Slot[circuit.LoadReturn[i]]);
        Pattern = FactorPattern.Of(count, ends, otherEnds);
        ConductorEntry = new int[plan.LiveConductors.Length];
        LoadEntry = new int[plan.LiveLoads.Length];
        for (int e = 0; e < edges; e++)
        {
            int entry = Pattern.EntryOf(ends[e], otherEnds[e]);
            if (e < ConductorEntry.Length)
                ConductorEntry[e] = entry;
            else
                LoadEntry[e - ConductorEntry.Length] = entry;
        }
    }

    public FactorPattern Pattern { get; }

    /// <summary>Slot of each node; <see cref="EliminationPlan.Unknowns"/> is the reference node.</summary>
    public int[] Slot { get; }

    /// <summary>One node for each slot, to name it by.</summary>
    public int[] NodeOfSlot { get; }

    /// <summary>Place of each live conductor's entry.</summary>
    public int[] ConductorEntry { get; }

    /// <summary>Place of each live load's entry, likewise.</summary>
    public int[] LoadEntry { get; }
}
