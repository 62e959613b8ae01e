// How the current of merged nodes spreads over the zero-ohm conductors that merge them.
namespace Lighting.Calc;

/// <summary>Equations of the merged nodes, each zero-ohm conductor counting as one siemens.</summary>
/// <remarks>
/// The currents are the limit of equal resistances that go to zero together. The lowest node of each cluster is its
/// reference; currents into a cluster sum to zero by the solution of the circuit. Immutable.
/// </remarks>
internal sealed class ZeroOhmPlan
{
    internal ZeroOhmPlan(Circuit circuit, TopologyKey key, int[] cluster)
    {
        var unknown = new int[circuit.NodeCount];
        int count = 0;
        for (int v = 0; v < unknown.Length; v++)
            unknown[v] = cluster[v] == v ? -1 : count++;

        Conductors = [.. Enumerable.Range(0, circuit.ConductorCount).Where(i => key.Conductor(i) == Link.Merged)];
        var order = new EliminationOrder(
            count,
            Conductors
                .Select(i => (unknown[circuit.ConductorA[i]], unknown[circuit.ConductorB[i]]))
                .Where(e => e.Item1 >= 0 && e.Item2 >= 0),
            last: -1
        );
        Slot = [.. unknown.Select(u => u < 0 ? count : order.Position[u])];
        Pattern = FactorPattern.Of(
            count,
            [.. Conductors.Select(i => Slot[circuit.ConductorA[i]])],
            [.. Conductors.Select(i => Slot[circuit.ConductorB[i]])]
        );
    }

    public int[] Conductors { get; }

    /// <summary>Slot of each node among the merged ones; <see cref="FactorPattern.Size"/> for all others.</summary>
    public int[] Slot { get; }

    public FactorPattern Pattern { get; }
}
