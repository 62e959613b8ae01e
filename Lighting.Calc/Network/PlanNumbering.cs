// The places of a plan in its matrix; made only when the plan is solved.
namespace Lighting.Calc.Network;

/// <summary>One slot for each unknown in order of elimination, the plus last, then ground; and the places of elements in the matrix.</summary>
internal sealed class PlanNumbering
{
    /// <param name="circuit">The circuit.</param>
    /// <param name="plan">The plan that is numbered.</param>
    /// <param name="cluster">For each node the lowest node that zero resistance joins it with.</param>
    internal PlanNumbering(Circuit circuit, Plan plan, int[] cluster)
    {
        int count = plan.Unknowns, plus = cluster[circuit.Plus], minus = cluster[circuit.Minus];
        var slotOf = new int[circuit.NodeCount];
        Array.Fill(slotOf, count);
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
        var edges = new (int A, int B)[plan.LiveConductors.Length + plan.LiveLoads.Length];
        int edge = 0;
        foreach (int i in plan.LiveConductors)
            edges[edge++] = (Slot[circuit.ConductorA[i]], Slot[circuit.ConductorB[i]]);
        foreach (int i in plan.LiveLoads)
            edges[edge++] = (Slot[circuit.LoadFeed[i]], Slot[circuit.LoadReturn[i]]);
        Pattern = FactorPattern.Of(count, edges);

        ConductorEntry = Entries(circuit.ConductorA, circuit.ConductorB, plan.LiveConductors);
        LoadEntry = Entries(circuit.LoadFeed, circuit.LoadReturn, plan.LiveLoads);
    }

    public FactorPattern Pattern { get; }

    public int[] Slot { get; }

    public int[] NodeOfSlot { get; }

    public int[] ConductorEntry { get; }

    public int[] LoadEntry { get; }

    private int[] Entries(int[] a, int[] b, int[] live)
    {
        var entry = new int[a.Length];
        foreach (int i in live)
            entry[i] = Pattern.EntryOf(Slot[a[i]], Slot[b[i]]);
        return entry;
    }
}
