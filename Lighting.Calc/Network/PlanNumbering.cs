// The order of elimination and the places of a plan; made only when the plan is solved.
namespace Lighting.Calc.Network;

/// <summary>One slot for each unknown in order of elimination, the plus last, then ground; and the places of elements in the matrix.</summary>
internal sealed class PlanNumbering
{
    /// <param name="circuit">The circuit.</param>
    /// <param name="plan">The plan that is numbered.</param>
    /// <param name="cluster">For each node the lowest node that zero resistance joins it with.</param>
    /// <param name="unknown">For each node that is an unknown its number; −1 for all others.</param>
    /// <param name="edges">Elements between clusters.</param>
    internal PlanNumbering(Circuit circuit, Plan plan, int[] cluster, int[] unknown, List<(int A, int B)> edges)
    {
        int count = plan.Unknowns, plus = cluster[circuit.Plus];
        var order = new EliminationOrder(
            count,
            edges.Select(e => (unknown[plan.Anchor[e.A]], unknown[plan.Anchor[e.B]])).Where(e => e.Item1 >= 0 && e.Item2 >= 0),
            plus == cluster[circuit.Minus] ? -1 : unknown[plus]);
        Pattern = new FactorPattern(order.Columns);

        Slot = new int[circuit.NodeCount];
        NodeOfSlot = new int[count + 1];
        NodeOfSlot[count] = circuit.Minus;
        for (int v = circuit.NodeCount - 1; v >= 0; v--)
        {
            int u = unknown[plan.Anchor[v]];
            Slot[v] = u < 0 ? count : order.Position[u];
            if (u >= 0 && plan.Anchor[v] == cluster[v])
                NodeOfSlot[Slot[v]] = v;
        }

        ConductorEntry = Entries(circuit.ConductorA, circuit.ConductorB, plan.LiveConductors);
        LoadEntry = Entries(circuit.LoadFeed, circuit.LoadReturn, plan.LiveLoads);
        ZeroOhm = new ZeroOhmPlan(circuit, plan.Key, cluster);
    }

    public FactorPattern Pattern { get; }

    public int[] Slot { get; }

    public int[] NodeOfSlot { get; }

    public int[] ConductorEntry { get; }

    public int[] LoadEntry { get; }

    public ZeroOhmPlan ZeroOhm { get; }

    private int[] Entries(int[] a, int[] b, int[] live)
    {
        var entry = new int[a.Length];
        foreach (int i in live)
            entry[i] = Pattern.EntryOf(Slot[a[i]], Slot[b[i]]);
        return entry;
    }
}
