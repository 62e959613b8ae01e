// Where everything stands in the factor LDLᵀ of a sparse symmetric matrix: a flat program for Factor to run.
namespace Lighting.Calc.Network;

/// <summary>Pattern of the strict lower triangle by columns, and where each update of the elimination lands.</summary>
internal sealed class FactorPattern
{
    private FactorPattern(int[] columnStart, int[] rows)
    {
        Size = columnStart.Length - 1;
        ColumnStart = columnStart;
        Rows = rows;
        int pairs = 0;
        for (int k = 0; k < Size; k++)
        {
            int length = columnStart[k + 1] - columnStart[k];
            pairs += length * (length - 1) / 2;
        }

        Targets = new int[pairs];
        int target = 0;
        for (int k = 0; k < Size; k++)
        {
            for (int p = columnStart[k]; p < columnStart[k + 1]; p++)
            {
                for (int q = p + 1; q < columnStart[k + 1]; q++)
                    Targets[target++] = EntryOf(rows[p], rows[q]);
            }
        }
    }

    public int Size { get; }

    /// <summary>First entry of each column; one more for the end.</summary>
    public int[] ColumnStart { get; }

    /// <summary>Row of each entry.</summary>
    public int[] Rows { get; }

    /// <summary>Entry that each pair of entries of a column updates, in the order in which elimination meets them.</summary>
    public int[] Targets { get; }

    /// <summary>Entries off the diagonal; the place of this number is a dummy.</summary>
    public int EntryCount => Rows.Length;

    /// <summary>The pattern of a matrix whose unknowns are eliminated in their order, fill included.</summary>
    /// <remarks>
    /// A column holds the later neighbours of its unknown and what the columns it is the first entry of leave: the elimination tree.
    /// Source: R. Schreiber, "A new implementation of sparse Gaussian elimination", 1982.
    /// </remarks>
    /// <param name="size">Number of unknowns.</param>
    /// <param name="edges">Pairs that share a matrix entry; repetitions, self-loops and ends beyond the unknowns (ground) are allowed.</param>
    public static FactorPattern Of(int size, ReadOnlySpan<(int A, int B)> edges)
    {
        var firstEdge = new int[size];
        var nextEdge = new int[edges.Length];
        Array.Fill(firstEdge, -1);
        for (int e = 0; e < edges.Length; e++)
        {
            int column = Math.Min(edges[e].A, edges[e].B);
            if (Math.Max(edges[e].A, edges[e].B) >= size)
                continue;
            nextEdge[e] = firstEdge[column];
            firstEdge[column] = e;
        }

        var start = new int[size + 1];
        var rows = new List<int>(2 * size);
        var firstChild = new int[size];
        var nextChild = new int[size];
        var seenIn = new int[size];
        Array.Fill(firstChild, -1);
        Array.Fill(seenIn, -1);
        for (int k = 0; k < size; k++)
        {
            seenIn[k] = k;
            for (int e = firstEdge[k]; e >= 0; e = nextEdge[e])
                Add(Math.Max(edges[e].A, edges[e].B), k);
            for (int child = firstChild[k]; child >= 0; child = nextChild[child])
            {
                for (int p = start[child]; p < start[child + 1]; p++)
                    Add(rows[p], k);
            }

            start[k + 1] = rows.Count;
            rows.Sort(start[k], start[k + 1] - start[k], null);
            if (start[k + 1] == start[k])
                continue;
            int parent = rows[start[k]];
            nextChild[k] = firstChild[parent];
            firstChild[parent] = k;
        }

        return new FactorPattern(start, [.. rows]);

        void Add(int row, int column)
        {
            if (seenIn[row] == column)
                return;
            seenIn[row] = column;
            rows.Add(row);
        }
    }

    /// <summary>Place of the entry of two rows; the dummy when one of them is beyond the matrix (ground).</summary>
    public int EntryOf(int a, int b)
    {
        int column = Math.Min(a, b);
        int row = Math.Max(a, b);
        if (row >= Size)
            return EntryCount;
        int place = Array.BinarySearch(Rows, ColumnStart[column], ColumnStart[column + 1] - ColumnStart[column], row);
        return place >= 0 ? place : throw new InvalidOperationException("The pattern lacks an entry.");
    }
}
