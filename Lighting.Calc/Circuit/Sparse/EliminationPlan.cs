// What a solver needs to know of a circuit with a given set of open and merged elements: unknowns, order, places.
namespace Lighting.Calc;

/// <summary>The reduced circuit: one slot for each unknown in order of elimination, the plus last, then the reference
/// node.</summary>
/// <remarks>
/// Merged nodes share a slot; nodes in which no current can flow take the slot of the point they are connected to
/// (<see cref="SourceBlock"/>), so that their elements have no voltage and need no equation. Immutable; its numbering
/// is made when it is first solved, by two threads at once twice and alike.
/// </remarks>
internal sealed class EliminationPlan
{
    private readonly Circuit circuit;
    private readonly int[] cluster;
    private EliminationNumbering? numbering;
    private ZeroOhmPlan? zeroOhm;

    internal EliminationPlan(Circuit circuit, TopologyKey key)
    {
        this.circuit = circuit;
        Key = key;
        cluster = Clusters(circuit, key);
        Anchor = new int[circuit.NodeCount];
        int minus = cluster[circuit.Minus],
            elements = circuit.ConductorCount + circuit.LoadCount;
        int needed = 2 * elements + Anchor.Length;
        Span<int> room = needed <= Scratch.OnStack ? stackalloc int[needed] : new int[needed];
        var scratch = new Scratch(room);
        Span<int> ends = scratch.Take(elements),
            otherEnds = scratch.Take(elements),
            anchor = scratch.Take(Anchor.Length);
        int present = 0;
        for (int i = 0; i < circuit.ConductorCount; i++)
        {
            if (key.Conductor(i) == Link.Finite)
                (ends[present], otherEnds[present++]) = (
                    cluster[circuit.ConductorA[i]],
                    cluster[circuit.ConductorB[i]]
                );
        }

        for (int i = 0; i < circuit.LoadCount; i++)
        {
            if (key.LoadConnected(i))
                (ends[present], otherEnds[present++]) = (cluster[circuit.LoadFeed[i]], cluster[circuit.LoadReturn[i]]);
        }

        SourceBlock.Anchors(ends[..present], otherEnds[..present], cluster[circuit.Plus], minus, anchor);
        for (int v = 0; v < anchor.Length; v++)
        {
            if (anchor[v] == v && v != minus)
                Unknowns++;
            Anchor[v] = anchor[cluster[v]];
        }

        int live = 0;
        Span<int> found = ends;
        for (int i = 0; i < circuit.ConductorCount; i++)
        {
            if (key.Conductor(i) == Link.Finite && Anchor[circuit.ConductorA[i]] != Anchor[circuit.ConductorB[i]])
                found[live++] = i;
        }

        LiveConductors = [.. found[..live]];
        live = 0;
        for (int i = 0; i < circuit.LoadCount; i++)
        {
            if (key.LoadConnected(i) && Anchor[circuit.LoadFeed[i]] != Anchor[circuit.LoadReturn[i]])
                found[live++] = i;
        }

        LiveLoads = [.. found[..live]];
    }

    public TopologyKey Key { get; }

    public int Unknowns { get; }

    /// <summary>For each node the node whose voltage it takes: where no current flows, that of the point it is
    /// connected to.</summary>
    public int[] Anchor { get; }

    /// <summary>Whether the node, or one that zero resistance joins it with, is in the source's block or the minus
    /// itself.</summary>
    public bool IsLive(int node) => Anchor[node] == cluster[node];

    /// <summary>Conductors that can carry current between two slots.</summary>
    public int[] LiveConductors { get; }

    /// <summary>Loads that can carry current.</summary>
    public int[] LiveLoads { get; }

    public EliminationNumbering Numbering => numbering ??= new EliminationNumbering(circuit, this, cluster);

    public ZeroOhmPlan ZeroOhm => zeroOhm ??= new ZeroOhmPlan(circuit, Key, cluster);

    /// <summary>For each node the lowest node that zero resistance joins it with.</summary>
    private static int[] Clusters(Circuit circuit, TopologyKey key)
    {
        DisjointSets? clusters = null;
        for (int i = 0; i < circuit.ConductorCount; i++)
        {
            if (key.Conductor(i) == Link.Merged)
                (clusters ??= new DisjointSets(circuit.NodeCount)).Join(circuit.ConductorA[i], circuit.ConductorB[i]);
        }

        return clusters?.Roots() ?? circuit.EachNode;
    }
}
