using MathNet.Numerics.LinearAlgebra;

namespace Lighting.Calc;

/// <summary>The conductors of one side of the battery in one state, as a tree of blocks: what each node's drop is made of.</summary>
/// <remarks>
/// A conductor whose removal cuts the side in two is a bridge, and all current of what lies beyond passes it. Conductors
/// in loops form blocks; within one, the drop from its entry to a node is Σ Z·I with transfer resistances Z ≥ 0 (the inverse
/// of a grounded conductance matrix has no negative entry), and the driving-point resistance falls with every resistance
/// in it (Rayleigh's law). Bridges: R. Tarjan, "A note on finding the bridges of a graph", 1974.
/// </remarks>
internal sealed class SideGraph
{
    private const double LeastOhms = 1e-9;
    private readonly SizingState _state;
    private readonly int _root;
    private readonly List<int> _order = [];
    private readonly int[] _parentEdge;
    private readonly int[] _block;
    private readonly Dictionary<int, int[]> _members = [];
    private readonly Dictionary<int, int[]> _blockEdges = [];

    public SideGraph(SizingState state, int nodes, int root)
    {
        _state = state;
        _root = root;
        _parentEdge = new int[nodes];
        _block = new int[nodes];
        FindBridges(nodes);
        foreach (IGrouping<int, int> members in _order.GroupBy(n => _block[n]))
            if (members.Count() > 1)
            {
                _members[members.Key] = [.. members];
                _blockEdges[members.Key] = [.. Enumerable.Range(0, state.Edges.Length).Where(e => Contains(state.Edges[e].A) && _block[state.Edges[e].A] == members.Key && _block[state.Edges[e].B] == members.Key && state.Edges[e].A != state.Edges[e].B)];
            }

        LoopRuns = [.. _blockEdges.Values.SelectMany(e => e).Select(e => state.Edges[e].Run).Where(r => r >= 0)];
    }

    /// <summary>Runs that are part of a loop.</summary>
    public HashSet<int> LoopRuns { get; }

    public bool Contains(int node) => _state.Part[node] == _state.Part[_root];

    /// <summary>Adds, for every node, the current it and all beyond it draw.</summary>
    /// <param name="injected">Current drawn at each node.</param>
    public double[] Behind(double[] injected)
    {
        double[] behind = new double[injected.Length];
        foreach (int node in _order)
            behind[node] = injected[node];
        for (int i = _order.Count - 1; i > 0; i--)
            behind[ParentOf(_order[i])] += behind[_order[i]];
        return behind;
    }

    /// <summary>Bounds the current of every run that is a bridge from below.</summary>
    public void BridgeCurrents(double[] behind, double[] atLeast)
    {
        foreach (int node in _order.Skip(1))
            if (IsBridge(node) && _state.Edges[_parentEdge[node]].Run is var run and >= 0)
                atLeast[run] = Math.Max(atLeast[run], behind[node]);
    }

    /// <summary>Walks from a node to the battery and adds up bounds of the drop.</summary>
    /// <param name="node">The node.</param>
    /// <param name="injected">Current drawn at each node.</param>
    /// <param name="behind">From <see cref="Behind"/>.</param>
    /// <param name="ohms">Resistance of a conductor: first of its thinnest size still open, second of its thickest.</param>
    /// <param name="lowest">True for the least the drop can be; false for the most.</param>
    /// <param name="coefficients">Takes the current through each run on the way; null adds the run's drop to the sum.</param>
    /// <returns>The sum without what went into <paramref name="coefficients"/>.</returns>
    public double Drop(int node, double[] injected, double[] behind, Func<HarnessEdge, (double Thin, double Thick)> ohms, bool lowest, double[]? coefficients)
    {
        double sum = 0;
        for (int at = node; ;)
        {
            int entry = Entry(at);
            if (entry != at)
                sum += InBlock(at, entry, injected, behind, ohms, lowest);
            at = entry;
            if (at == _root)
                return sum;
            HarnessEdge edge = _state.Edges[_parentEdge[at]];
            double amperes = behind[at];
            if (coefficients is not null && edge.Run >= 0 && amperes > 0)
            {
                coefficients[edge.Run] += amperes;
                sum += amperes * edge.FixedOhms;
            }
            else
            {
                (double thin, double thick) = ohms(edge);
                sum += amperes * (lowest == amperes > 0 ? thick : thin);
            }

            at = edge.Other(at);
        }
    }

    private double InBlock(int node, int entry, double[] injected, double[] behind, Func<HarnessEdge, (double Thin, double Thick)> ohms, bool lowest)
    {
        int[] members = _members[_block[node]];
        HarnessEdge[] edges = [.. _blockEdges[_block[node]].Select(e => _state.Edges[e])];
        double[] hang = [.. members.Select(m => HangingOn(m, injected, behind))];
        bool settled = edges.All(e => ohms(e) is var (thin, thick) && thin == thick);
        int own = Array.IndexOf(members, node);
        Matrix<double> thick = Transfer(members, edges, entry, e => ohms(e).Thick), thin = settled ? thick : Transfer(members, edges, entry, e => ohms(e).Thin);
        double sum = 0;
        for (int j = 0; j < members.Length; j++)
        {
            // Z of a node with another is at most the smaller of their own, and those fall with every resistance.
            double least = settled ? thick[own, j] : j == own ? thick[j, j] : 0;
            double most = settled ? thick[own, j] : Math.Min(thin[own, own], thin[j, j]);
            sum += hang[j] * (lowest == hang[j] > 0 ? least : most);
        }

        return sum;
    }

    private double HangingOn(int node, double[] injected, double[] behind) =>
        injected[node] + _order.Skip(1).Where(n => IsBridge(n) && ParentOf(n) == node).Sum(n => behind[n]);

    private static Matrix<double> Transfer(int[] members, HarnessEdge[] edges, int entry, Func<HarnessEdge, double> ohms)
    {
        var conductance = Matrix<double>.Build.Dense(members.Length, members.Length);
        foreach (HarnessEdge edge in edges)
        {
            int a = Array.IndexOf(members, edge.A), b = Array.IndexOf(members, edge.B);
            double siemens = 1 / Math.Max(LeastOhms, ohms(edge));
            conductance[a, a] += siemens;
            conductance[b, b] += siemens;
            conductance[a, b] -= siemens;
            conductance[b, a] -= siemens;
        }

        int ground = Array.IndexOf(members, entry);
        Matrix<double> reduced = conductance.RemoveRow(ground).RemoveColumn(ground).Inverse();
        var zero = Vector<double>.Build.Dense(members.Length - 1);
        return reduced.InsertColumn(ground, zero).InsertRow(ground, Vector<double>.Build.Dense(members.Length));
    }

    // The node of a block that is nearest to the battery was found first.
    private int Entry(int node) => _members.TryGetValue(_block[node], out int[]? members) ? members[0] : node;

    private bool IsBridge(int node) => _block[node] != _block[ParentOf(node)];

    private int ParentOf(int node) => _state.Edges[_parentEdge[node]].Other(node);

    private void FindBridges(int nodes)
    {
        var at = new List<int>[nodes];
        for (int n = 0; n < nodes; n++)
            at[n] = [];
        for (int e = 0; e < _state.Edges.Length; e++)
        {
            at[_state.Edges[e].A].Add(e);
            if (_state.Edges[e].A != _state.Edges[e].B)
                at[_state.Edges[e].B].Add(e);
        }

        int[] found = new int[nodes], low = new int[nodes], next = new int[nodes];
        Array.Fill(found, -1);
        Array.Fill(_parentEdge, -1);
        var stack = new Stack<int>();
        Visit(_root);
        while (stack.TryPeek(out int node))
        {
            if (next[node] == at[node].Count)
            {
                stack.Pop();
                if (node != _root)
                    low[ParentOf(node)] = Math.Min(low[ParentOf(node)], low[node]);
                continue;
            }

            int edge = at[node][next[node]++];
            int other = _state.Edges[edge].Other(node);
            if (edge == _parentEdge[node])
                continue;
            if (found[other] >= 0)
            {
                low[node] = Math.Min(low[node], found[other]);
                continue;
            }

            _parentEdge[other] = edge;
            Visit(other);
        }

        foreach (int node in _order)
            _block[node] = node == _root || low[node] == found[node] ? node : _block[ParentOf(node)];

        void Visit(int node)
        {
            found[node] = low[node] = _order.Count;
            _order.Add(node);
            stack.Push(node);
        }
    }
}
