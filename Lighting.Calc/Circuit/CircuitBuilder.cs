// Collects nodes and elements of a circuit; values come later, in the solver.
namespace Lighting.Calc;

/// <summary>Builds a <see cref="Circuit"/>. Every method returns the index by which the solver knows the new
/// part.</summary>
internal sealed class CircuitBuilder
{
    private readonly List<(int A, int B)> conductors = [];
    private readonly List<(int Feed, int Return)> loads = [];
    private int nodes;
    private int plus = -1;
    private int minus = -1;

    public int AddNode() => nodes++;

    /// <summary>Wire, joint, contact, fuse or meter: a resistance whose current counts from a to b.</summary>
    public int AddConductor(int a, int b)
    {
        conductors.Add((Known(a), Known(b)));
        return conductors.Count - 1;
    }

    /// <summary>A <see cref="Load"/> whose current counts from feed to return.</summary>
    public int AddLoad(int feed, int ret)
    {
        loads.Add((Known(feed), Known(ret)));
        return loads.Count - 1;
    }

    /// <summary>The one source; its minus is the reference node of 0 V.</summary>
    public void Source(int plusNode, int minusNode)
    {
        plus = Known(plusNode);
        minus = Known(minusNode);
    }

    public Circuit Build()
    {
        if (plus < 0)
            throw new InvalidOperationException("A circuit needs its source: call Source first.");
        return new Circuit(nodes, plus, minus, [.. conductors], [.. loads]);
    }

    private int Known(int node)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(node);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(node, nodes);
        return node;
    }
}
