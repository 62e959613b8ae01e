// What a solver needs to know of a circuit with a given set of open and merged elements: unknowns, order, places.
namespace Lighting.Calc.Network;

/// <summary>The reduced circuit: one slot for each unknown in order of elimination, the plus last, then ground.</summary>
/// <remarks>
/// Merged nodes share a slot; nodes in which no current can flow take the slot of the point they hang on
/// (<see cref="LiveCore"/>), so that their elements have no volts and need no equation. Immutable.
/// </remarks>
internal sealed class Plan
{
    internal Plan(Circuit circuit, TopologyKey key)
    {
        Key = key;
        int[] cluster = Clusters(circuit, key);
        int plus = cluster[circuit.Plus];
        int minus = cluster[circuit.Minus];

        var edges = new List<(int A, int B)>();
        for (int i = 0; i < circuit.ConductorCount; i++)
        {
            if (key.Conductor(i) == Link.Finite)
                edges.Add((cluster[circuit.ConductorA[i]], cluster[circuit.ConductorB[i]]));
        }

        for (int i = 0; i < circuit.LoadCount; i++)
        {
            if (key.LoadConnected(i))
                edges.Add((cluster[circuit.LoadFeed[i]], cluster[circuit.LoadReturn[i]]));
        }

        int[] anchor = LiveCore.Anchors(circuit.NodeCount, edges, plus, minus);
        var unknown = new int[circuit.NodeCount];
        Array.Fill(unknown, -1);
        int count = 0;
        for (int v = 0; v < circuit.NodeCount; v++)
        {
            if (anchor[v] == v && v != minus)
                unknown[v] = count++;
        }

        Unknowns = count;
        var order = new EliminationOrder(
            count,
            edges.Select(e => (unknown[anchor[e.A]], unknown[anchor[e.B]])).Where(e => e.Item1 >= 0 && e.Item2 >= 0),
            plus == minus ? -1 : unknown[plus]);
        Pattern = new FactorPattern(order.Columns);

        Slot = new int[circuit.NodeCount];
        NodeOfSlot = new int[count + 1];
        NodeOfSlot[count] = circuit.Minus;
        for (int v = circuit.NodeCount - 1; v >= 0; v--)
        {
            int u = unknown[anchor[cluster[v]]];
            Slot[v] = u < 0 ? count : order.Position[u];
            if (u >= 0 && anchor[cluster[v]] == cluster[v])
                NodeOfSlot[Slot[v]] = v;
        }

        ConductorEntry = new int[circuit.ConductorCount];
        LiveConductors = Live(circuit.ConductorA, circuit.ConductorB, ConductorEntry, i => key.Conductor(i) == Link.Finite);
        LoadEntry = new int[circuit.LoadCount];
        LiveLoads = Live(circuit.LoadFeed, circuit.LoadReturn, LoadEntry, key.LoadConnected);
        ZeroOhm = new ZeroOhmPlan(circuit, key, cluster);
    }

    public TopologyKey Key { get; }

    public int Unknowns { get; }

    public FactorPattern Pattern { get; }

    /// <summary>Slot of each node; <see cref="Unknowns"/> is ground.</summary>
    public int[] Slot { get; }

    /// <summary>One node for each slot, to name it by.</summary>
    public int[] NodeOfSlot { get; }

    /// <summary>Conductors that can carry current between two slots.</summary>
    public int[] LiveConductors { get; }

    /// <summary>Loads that can carry current.</summary>
    public int[] LiveLoads { get; }

    /// <summary>Place of a conductor's or load's entry off the diagonal; the dummy place when one end is ground.</summary>
    public int[] ConductorEntry { get; }

    public int[] LoadEntry { get; }

    public ZeroOhmPlan ZeroOhm { get; }

    private int[] Live(int[] a, int[] b, int[] entry, Func<int, bool> present)
    {
        var live = new List<int>();
        for (int i = 0; i < a.Length; i++)
        {
            if (!present(i) || Slot[a[i]] == Slot[b[i]])
                continue;
            live.Add(i);
            entry[i] = Pattern.EntryOf(Slot[a[i]], Slot[b[i]]);
        }

        return [.. live];
    }

    /// <summary>For each node the lowest node that zero resistance joins it with.</summary>
    private static int[] Clusters(Circuit circuit, TopologyKey key)
    {
        int[] root = [.. Enumerable.Range(0, circuit.NodeCount)];
        for (int i = 0; i < circuit.ConductorCount; i++)
        {
            if (key.Conductor(i) != Link.Merged)
                continue;
            int a = Root(circuit.ConductorA[i]);
            int b = Root(circuit.ConductorB[i]);
            root[Math.Max(a, b)] = Math.Min(a, b);
        }

        for (int v = 0; v < root.Length; v++)
            root[v] = Root(v);
        return root;

        int Root(int v)
        {
            while (root[v] != v)
                v = root[v] = root[root[v]];
            return v;
        }
    }
}
