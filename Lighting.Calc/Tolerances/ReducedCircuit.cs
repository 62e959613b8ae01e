
namespace Lighting.Calc;

/// <summary>What carries current in one electrical state, with parts in series taken together: the same volts at the loads from fewer equations.</summary>
/// <remarks>Built once for a state; chains and loads keep their places, so that a sample only sets their numbers.</remarks>
internal sealed class ReducedCircuit
{
    private ReducedCircuit(Circuit circuit, int[][] chains, int[] loads)
    {
        Circuit = circuit;
        Chains = chains;
        Loads = loads;
    }

    public Circuit Circuit { get; }

    /// <summary>For each of its conductors the conductors of the whole circuit that lie in series in it.</summary>
    public int[][] Chains { get; }

    /// <summary>For each of its loads the load of the whole circuit.</summary>
    public int[] Loads { get; }

    /// <summary>Reduces a circuit.</summary>
    /// <param name="circuit">The whole circuit.</param>
    /// <param name="key">Which elements are open, finite or merged.</param>
    /// <param name="plan">The whole circuit's plan for them.</param>
    public static ReducedCircuit Of(Circuit circuit, TopologyKey key, EliminationPlan plan)
    {
        // Elements without resistance stay as they are: a fuse may be one of them, and its current is asked for.
        List<Chain> chains =
        [
            .. plan.LiveConductors.Concat(Enumerable.Range(0, circuit.ConductorCount).Where(c => key.Conductor(c) == Link.Merged))
                .Order()
                .Select(c => new Chain(circuit.ConductorA[c], circuit.ConductorB[c], [c]))
                .Where(c => c.A != c.B),
        ];
        var kept = new HashSet<int> { circuit.Plus, circuit.Minus };
        foreach (int load in plan.LiveLoads)
        {
            kept.Add(circuit.LoadFeed[load]);
            kept.Add(circuit.LoadReturn[load]);
        }

        while (Join(chains, kept))
        {
        }

        var builder = new CircuitBuilder();
        var nodes = new Dictionary<int, int>();
        int Node(int of) => nodes.TryGetValue(of, out int node) ? node : nodes[of] = builder.AddNode();
        builder.Source(Node(circuit.Plus), Node(circuit.Minus));
        foreach (Chain chain in chains)
            builder.AddConductor(Node(chain.A), Node(chain.B));
        foreach (int load in plan.LiveLoads)
            builder.AddLoad(Node(circuit.LoadFeed[load]), Node(circuit.LoadReturn[load]));
        return new ReducedCircuit(builder.Build(), [.. chains.Select(c => c.Parts)], [.. plan.LiveLoads]);
    }

    // Takes away one node at which only two chains meet, or the one chain that ends in nothing.
    private static bool Join(List<Chain> chains, HashSet<int> kept)
    {
        foreach (IGrouping<int, Chain> at in chains.SelectMany(c => new[] { (c.A, c), (c.B, c) }).Where(e => !kept.Contains(e.Item1)).GroupBy(e => e.Item1, e => e.c))
        {
            Chain[] meeting = [.. at];
            if (meeting.Length > 2)
                continue;
            foreach (Chain chain in meeting)
                chains.Remove(chain);
            if (meeting.Length == 2 && meeting[0] != meeting[1] && meeting[0].Other(at.Key) != meeting[1].Other(at.Key))
                chains.Add(new Chain(meeting[0].Other(at.Key), meeting[1].Other(at.Key), [.. meeting[0].Parts, .. meeting[1].Parts]));
            return true;
        }

        return false;
    }

    private sealed record Chain(int A, int B, int[] Parts)
    {
        public int Other(int node) => A == node ? B : A;
    }
}
