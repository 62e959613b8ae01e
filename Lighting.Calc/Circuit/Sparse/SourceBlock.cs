// Finds the part of a circuit in which current can flow; all else has the voltage of the point it is connected to.
namespace Lighting.Calc;

/// <summary>The block (biconnected part) of the graph that holds the source.</summary>
/// <remarks>
/// An element carries current only when a closed path through the source and the element exists: both lie in one
/// block. A switched-off branch, a meter lead with one end free, a lamp with its earth open are outside of it, carry
/// exactly nothing and need no equation. Source: R. Tarjan, "Depth-first search and linear graph algorithms", 1972.
/// </remarks>
internal static class SourceBlock
{
    /// <param name="ends">A vertex of each edge.</param>
    /// <param name="otherEnds">The other vertex of each edge.</param>
    /// <param name="plus">The source's plus.</param>
    /// <param name="minus">The source's minus.</param>
    /// <param name="anchor">
    /// Receives for each vertex the vertex of the block whose voltage it takes: itself inside, its point of attachment
    /// outside,
    /// <paramref name="minus"/> for a floating one.
    /// </param>
    public static void Anchors(
        ReadOnlySpan<int> ends,
        ReadOnlySpan<int> otherEnds,
        int plus,
        int minus,
        Span<int> anchor
    )
    {
        anchor.Fill(minus);
        if (plus == minus)
            return;

        int vertices = anchor.Length,
            needed = vertices + 2 + 4 * ends.Length + 6 * vertices;
        Span<int> room = needed <= Scratch.OnStack ? stackalloc int[needed] : new int[needed];
        var scratch = new Scratch(room);
        Span<int> start = scratch.Take(vertices + 2),
            other = scratch.Take(2 * ends.Length),
            edgeOf = scratch.Take(2 * ends.Length);
        Adjacency(ends, otherEnds, start, other, edgeOf);
        Span<int> depthOrder = scratch.Take(vertices); // 0: not yet seen
        Span<int> low = scratch.Take(vertices),
            parent = scratch.Take(vertices),
            parentEdge = scratch.Take(vertices);
        Span<int> next = scratch.Take(vertices),
            visited = scratch.Take(vertices);
        int seen = 0;
        int clock = 1;
        depthOrder[minus] = clock++;
        low[minus] = 1;

        // The source is the first edge of the tree, from minus to plus; minus itself is not searched further, since
        // what is connected to it alone reads 0 V like the floating parts.
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
    }

    private static void Adjacency(
        ReadOnlySpan<int> ends,
        ReadOnlySpan<int> otherEnds,
        Span<int> start,
        Span<int> other,
        Span<int> edge
    )
    {
        for (int e = 0; e < ends.Length; e++)
        {
            start[ends[e] + 2]++;
            start[otherEnds[e] + 2]++;
        }

        for (int v = 2; v < start.Length; v++)
            start[v] += start[v - 1];
        for (int e = 0; e < ends.Length; e++)
        {
            int a = ends[e],
                b = otherEnds[e];
            other[start[a + 1]] = b;
            edge[start[a + 1]++] = e;
            other[start[b + 1]] = a;
            edge[start[b + 1]++] = e;
        }
    }
}
