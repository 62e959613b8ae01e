// The fixed part of a circuit: which element is connected between which nodes. Immutable but for its cache of plans.
using System.Collections.Concurrent;

namespace Lighting.Calc;

/// <summary>Topology of a circuit, shared by any number of <see cref="CircuitSolver"/>s on any thread.</summary>
internal sealed class Circuit
{
    private const int MostPlans = 1024;

    private readonly ConcurrentDictionary<TopologyKey, EliminationPlan> plans = new();
    private int planCount;

    internal Circuit(int nodes, int plus, int minus, (int A, int B)[] conductors, (int Feed, int Return)[] loads)
    {
        NodeCount = nodes;
        Plus = plus;
        Minus = minus;
        ConductorA = [.. conductors.Select(c => c.A)];
        ConductorB = [.. conductors.Select(c => c.B)];
        LoadFeed = [.. loads.Select(l => l.Feed)];
        LoadReturn = [.. loads.Select(l => l.Return)];
        EachNode = [.. Enumerable.Range(0, nodes)];
    }

    public int NodeCount { get; }

    public int Plus { get; }

    public int Minus { get; }

    public int ConductorCount => ConductorA.Length;

    public int LoadCount => LoadFeed.Length;

    /// <summary>The voltage of a load, feed to return, with some voltages of the nodes.</summary>
    public double LoadVolts(int load, double[] nodeVolts) => nodeVolts[LoadFeed[load]] - nodeVolts[LoadReturn[load]];

    internal int[] ConductorA { get; }

    internal int[] ConductorB { get; }

    internal int[] LoadFeed { get; }

    internal int[] LoadReturn { get; }

    /// <summary>Each node's own number: the clusters of a circuit in which nothing is merged.</summary>
    internal int[] EachNode { get; }

    /// <summary>Every node but the minus in order of elimination, all conductors taken as present; the plus
    /// last.</summary>
    internal int[] Order => field ??= MakeOrder();

    /// <summary>The plan for a set of open, closed and merged elements: made once for each set, then looked
    /// up.</summary>
    internal EliminationPlan PlanFor(TopologyKey key)
    {
        if (plans.TryGetValue(key, out EliminationPlan? plan))
            return plan;
        plan = new EliminationPlan(this, key.Copy());
        // Counted apart: the dictionary's own count takes all of its locks.
        if (Volatile.Read(ref planCount) < MostPlans && plans.TryAdd(plan.Key, plan))
            Interlocked.Increment(ref planCount);
        return plan;
    }

    private int[] MakeOrder()
    {
        // The minus is the reference node and no unknown: its place is closed up.
        int Unknown(int node) => node < Minus ? node : node - 1;
        int Node(int unknown) => unknown < Minus ? unknown : unknown + 1;
        var order = new EliminationOrder(
            NodeCount - 1,
            ConductorA
                .Zip(ConductorB)
                .Concat(LoadFeed.Zip(LoadReturn))
                .Where(e => e.First != Minus && e.Second != Minus)
                .Select(e => (Unknown(e.First), Unknown(e.Second))),
            Plus == Minus ? -1 : Unknown(Plus)
        );
        var nodes = new int[NodeCount - 1];
        for (int u = 0; u < nodes.Length; u++)
            nodes[order.Position[u]] = Node(u);
        return nodes;
    }
}
