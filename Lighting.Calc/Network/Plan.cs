// What a solver needs to know of a circuit with a given set of open and merged elements: unknowns, order, places.
namespace Lighting.Calc.Network;

/// <summary>The reduced circuit: one slot for each unknown in order of elimination, the plus last, then ground.</summary>
/// <remarks>
/// Merged nodes share a slot; nodes in which no current can flow take the slot of the point they hang on
/// (<see cref="LiveCore"/>), so that their elements have no volts and need no equation. Immutable.
/// </remarks>
internal sealed class Plan
{
    private readonly Lazy<PlanNumbering> numbering;
    private readonly int[] cluster;
    private readonly Lazy<ZeroOhmPlan> zeroOhm;

    internal Plan(Circuit circuit, TopologyKey key)
    {
        Key = key;
        cluster = Clusters(circuit, key);
        int plus = cluster[circuit.Plus];
        int minus = cluster[circuit.Minus];

        var edges = new (int A, int B)[circuit.ConductorCount + circuit.LoadCount];
        int present = 0;
        for (int i = 0; i < circuit.ConductorCount; i++)
        {
            if (key.Conductor(i) == Link.Finite)
                edges[present++] = (cluster[circuit.ConductorA[i]], cluster[circuit.ConductorB[i]]);
        }

        for (int i = 0; i < circuit.LoadCount; i++)
        {
            if (key.LoadConnected(i))
                edges[present++] = (cluster[circuit.LoadFeed[i]], cluster[circuit.LoadReturn[i]]);
        }

        int[] anchor = LiveCore.Anchors(circuit.NodeCount, edges.AsSpan(0, present), plus, minus);
        for (int v = 0; v < circuit.NodeCount; v++)
        {
            if (anchor[v] == v && v != minus)
                Unknowns++;
        }

        Anchor = new int[circuit.NodeCount];
        for (int v = 0; v < Anchor.Length; v++)
            Anchor[v] = anchor[cluster[v]];
        LiveConductors = Live(circuit.ConductorA, circuit.ConductorB, i => key.Conductor(i) == Link.Finite);
        LiveLoads = Live(circuit.LoadFeed, circuit.LoadReturn, key.LoadConnected);
        zeroOhm = new Lazy<ZeroOhmPlan>(() => new ZeroOhmPlan(circuit, key, cluster));
        numbering = new Lazy<PlanNumbering>(() => new PlanNumbering(circuit, this, cluster));
    }

    public TopologyKey Key { get; }

    public int Unknowns { get; }

    /// <summary>For each node the node whose volts it takes: where no current flows, that of the point it hangs on.</summary>
    public int[] Anchor { get; }

    /// <summary>Whether the node, or one that zero resistance joins it with, is in the source's block or the minus itself.</summary>
    public bool IsLive(int node) => Anchor[node] == cluster[node];

    public FactorPattern Pattern => numbering.Value.Pattern;

    /// <summary>Slot of each node; <see cref="Unknowns"/> is ground.</summary>
    public int[] Slot => numbering.Value.Slot;

    /// <summary>One node for each slot, to name it by.</summary>
    public int[] NodeOfSlot => numbering.Value.NodeOfSlot;

    /// <summary>Conductors that can carry current between two slots.</summary>
    public int[] LiveConductors { get; }

    /// <summary>Loads that can carry current.</summary>
    public int[] LiveLoads { get; }

    /// <summary>Place of a conductor's or load's entry off the diagonal; the dummy place when one end is ground.</summary>
    public int[] ConductorEntry => numbering.Value.ConductorEntry;

    public int[] LoadEntry => numbering.Value.LoadEntry;

    public ZeroOhmPlan ZeroOhm => zeroOhm.Value;

    private int[] Live(int[] a, int[] b, Func<int, bool> present)
    {
        var live = new int[a.Length];
        int count = 0;
        for (int i = 0; i < a.Length; i++)
        {
            if (present(i) && Anchor[a[i]] != Anchor[b[i]])
                live[count++] = i;
        }

        return live[..count];
    }

    /// <summary>For each node the lowest node that zero resistance joins it with.</summary>
    private static int[] Clusters(Circuit circuit, TopologyKey key)
    {
        var clusters = new DisjointSets(circuit.NodeCount);
        for (int i = 0; i < circuit.ConductorCount; i++)
        {
            if (key.Conductor(i) == Link.Merged)
                clusters.Join(circuit.ConductorA[i], circuit.ConductorB[i]);
        }

        return clusters.Roots();
    }
}
