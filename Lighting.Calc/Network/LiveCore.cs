// Finds the part of a circuit in which current can flow; all else takes the volts of the point it hangs on.
namespace Lighting.Calc.Network;

/// <summary>The block (biconnected part) of the graph that holds the source.</summary>
/// <remarks>
/// An element carries current only when a closed path through the source and the element exists: both lie in one
/// block. A switched-off branch, a meter lead with one end free, a lamp with its ground off are outside of it, carry
/// exactly nothing and need no equation. Source: R. Tarjan, "Depth-first search and linear graph algorithms", 1972.
/// </remarks>
internal static class LiveCore
{
    /// <summary>
    /// For each vertex the vertex of the block whose volts it takes: itself inside, its point of attachment outside,
    /// <paramref name="minus"/> for a floating one.
    /// </summary>
    public static int[] Anchors(int vertices, ReadOnlySpan<(int A, int B)> edges, int plus, int minus)
    {
        var anchor = new int[vertices];
        Array.Fill(anchor, minus);
        if (plus == minus)
            return anchor;

        (int[] start, int[] other, int[] edgeOf) = Adjacency(vertices, edges);
        var depthOrder = new int[vertices]; // 0: not yet seen
        var low = new int[vertices];
        var parent = new int[vertices];
        var parentEdge = new int[vertices];
        var next = new int[vertices];
        var visited = new int[vertices];
        int seen = 0;
        int clock = 1;
        depthOrder[minus] = clock++;
        low[minus] = 1;

        // The source is the first edge of the tree, from minus to plus; minus itself is not searched further, since
        // what hangs on it alone reads 0 V like the floating parts.
        int at = plus;
        parent[plus] = minus;
        parentEdge[plus] = -1;
        low[plus] = depthOrder[plus] = clock++;
        next[plus] = start[plus];
        visited[seen++] = plus;
        while (at != minus)
        {
            if (next[at] == start[at + 1])
            {
                int up = parent[at];
                low[up] = Math.Min(low[up], low[at]);
                at = up;
                continue;
            }

            int slot = next[at]++;
            int to = other[slot];
            if (edgeOf[slot] == parentEdge[at])
                continue;
            if (depthOrder[to] != 0)
            {
                low[at] = Math.Min(low[at], depthOrder[to]);
                continue;
            }

            parent[to] = at;
            parentEdge[to] = edgeOf[slot];
            low[to] = depthOrder[to] = clock++;
            next[to] = start[to];
            visited[seen++] = to;
            at = to;
        }

        anchor[plus] = plus;
        for (int i = 1; i < seen; i++)
        {
            int v = visited[i];
            int up = parent[v];
            bool inside = anchor[up] == up && low[v] < depthOrder[up];
            anchor[v] = inside ? v : anchor[up];
        }

        return anchor;
    }

    private static (int[] Start, int[] Other, int[] Edge) Adjacency(int vertices, ReadOnlySpan<(int A, int B)> edges)
    {
        var start = new int[vertices + 2];
        foreach ((int a, int b) in edges)
        {
            start[a + 2]++;
            start[b + 2]++;
        }

        for (int v = 2; v < start.Length; v++)
            start[v] += start[v - 1];
        var other = new int[2 * edges.Length];
        var edge = new int[2 * edges.Length];
        for (int e = 0; e < edges.Length; e++)
        {
            (int a, int b) = edges[e];
            other[start[a + 1]] = b;
            edge[start[a + 1]++] = e;
            other[start[b + 1]] = a;
            edge[start[b + 1]++] = e;
        }

        return (start, other, edge);
    }
}
