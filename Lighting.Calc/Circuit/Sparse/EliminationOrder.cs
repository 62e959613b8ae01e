// Minimum-degree order of elimination.
namespace Lighting.Calc;

/// <summary>Order in which a sparse symmetric system is eliminated.</summary>
/// <remarks>
/// Source: W. F. Tinney and J. W. Walker, "Direct solutions of sparse network equations by optimally ordered
/// triangular factorization", 1967 (their second scheme). Harnesses are nearly trees, so almost all pivots have one or
/// two neighbours and plain lists of neighbours suffice.
/// </remarks>
internal sealed class EliminationOrder
{
    private readonly List<int>[] neighbours;
    private readonly int[] degree;
    private readonly bool[] done;

    /// <param name="vertices">Number of unknowns.</param>
    /// <param name="edges">Pairs that share a matrix entry; repetitions and self-loops are allowed.</param>
    /// <param name="last">Unknown to eliminate last, whatever its degree.</param>
    public EliminationOrder(int vertices, IEnumerable<(int A, int B)> edges, int last)
    {
        neighbours = new List<int>[vertices];
        for (int v = 0; v < vertices; v++)
            neighbours[v] = [];
        degree = new int[vertices];
        done = new bool[vertices];
        Position = new int[vertices];
        foreach ((int a, int b) in edges)
            Join(a, b);
        Eliminate(last);
    }

    /// <summary>Place of each unknown in the order.</summary>
    public int[] Position { get; }

    private void Eliminate(int last)
    {
        // A vertex is queued again whenever its degree changes; entries of an older degree are skipped.
        var queue = new PriorityQueue<int, (int Degree, int Vertex)>();
        for (int v = 0; v < neighbours.Length; v++)
            Enqueue(v);
        for (int place = 0; place < neighbours.Length; place++)
        {
            int v;
            (int Degree, int Vertex) key;
            do
            {
                queue.TryDequeue(out v, out key);
            } while (done[v] || (v != last && key.Degree != degree[v]));

            List<int> around = neighbours[v];
            around.RemoveAll(w => done[w]);
            done[v] = true;
            Position[v] = place;
            foreach (int w in around)
                degree[w]--;
            for (int i = 0; i < around.Count; i++)
            {
                for (int j = i + 1; j < around.Count; j++)
                    Join(around[i], around[j]);
            }

            foreach (int w in around)
                Enqueue(w);
        }

        void Enqueue(int v) => queue.Enqueue(v, (v == last ? int.MaxValue : degree[v], v));
    }

    private void Join(int a, int b)
    {
        if (a == b)
            return;
        List<int> ofA = Tidied(a);
        List<int> ofB = Tidied(b);
        if (ofA.Count <= ofB.Count ? ofA.Contains(b) : ofB.Contains(a))
            return;
        ofA.Add(b);
        ofB.Add(a);
        degree[a]++;
        degree[b]++;
    }

    /// <summary>Neighbours of a vertex with at most about half of them eliminated already: a hub is not tidied each
    /// time.</summary>
    private List<int> Tidied(int v)
    {
        List<int> list = neighbours[v];
        if (list.Count > 2 * degree[v] + 8)
            list.RemoveAll(w => done[w]);
        return list;
    }
}
