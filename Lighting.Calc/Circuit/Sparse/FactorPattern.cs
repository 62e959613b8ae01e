// Pattern of the factor LDLᵀ of a sparse symmetric matrix: a flat program for Factor to run.
namespace Lighting.Calc;

/// <summary>Pattern of the strict lower triangle by columns, and where each update of the elimination lands.</summary>
internal sealed class FactorPattern
{
    /// <summary>The pattern of no unknowns.</summary>
    public static readonly FactorPattern Empty = new([0], []);

    private FactorPattern(int[] columnStart, int[] rows)
    {
        Size = columnStart.Length - 1;
        ColumnStart = columnStart;
        Rows = rows;
        EntryCount = columnStart[Size];
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

    /// <summary>Row of each entry; what follows the last has no meaning.</summary>
    public int[] Rows { get; }

    /// <summary>Entry that each pair of entries of a column updates, in the order in which elimination meets
    /// them.</summary>
    public int[] Targets { get; }

    /// <summary>Entries off the diagonal; the places of an unknown and the reference node follow, one for each
    /// unknown.</summary>
    public int EntryCount { get; }

    /// <summary>All places: of the entries, of the unknowns with the reference node, and a dummy.</summary>
    public int PlaceCount => EntryCount + Size + 1;

    /// <summary>The pattern of a matrix whose unknowns are eliminated in their order, fill included.</summary>
    /// <remarks>
    /// A column holds the later neighbours of its unknown and what the columns it is the first entry of leave: the
    /// elimination tree. Source: R. Schreiber, "A new implementation of sparse Gaussian elimination", 1982.
    /// </remarks>
    /// <param name="size">Number of unknowns.</param>
    /// <param name="ends">Of each pair that shares a matrix entry the one; repetitions, pairs of one and the same and
    /// ends beyond the unknowns (the reference node) are allowed.</param>
    /// <param name="otherEnds">Of each pair the other.</param>
    public static FactorPattern Of(int size, ReadOnlySpan<int> ends, ReadOnlySpan<int> otherEnds)
    {
        int needed = 4 * size + ends.Length;
        Span<int> room = needed <= Scratch.OnStack ? stackalloc int[needed] : new int[needed];
        var scratch = new Scratch(room);
        Span<int> firstEdge = scratch.Take(size, -1),
            firstChild = scratch.Take(size, -1),
            seenIn = scratch.Take(size, -1);
        Span<int> nextChild = scratch.Take(size),
            nextEdge = scratch.Take(ends.Length);
        for (int e = 0; e < ends.Length; e++)
        {
            int column = Math.Min(ends[e], otherEnds[e]);
            if (Math.Max(ends[e], otherEnds[e]) >= size)
                continue;
            nextEdge[e] = firstEdge[column];
            firstEdge[column] = e;
        }

        var start = new int[size + 1];
        var rows = new int[ends.Length];
        int count = 0;
        for (int k = 0; k < size; k++)
        {
            seenIn[k] = k;
            // A column has no more rows than come after it.
            if (rows.Length - count < size - k)
                Array.Resize(ref rows, 2 * rows.Length + size - k);
            for (int e = firstEdge[k]; e >= 0; e = nextEdge[e])
            {
                int row = Math.Max(ends[e], otherEnds[e]);
                if (seenIn[row] != k)
                    rows[count++] = row;
                seenIn[row] = k;
            }

            for (int child = firstChild[k]; child >= 0; child = nextChild[child])
            {
                for (int p = start[child]; p < start[child + 1]; p++)
                {
                    int row = rows[p];
                    if (seenIn[row] != k)
                        rows[count++] = row;
                    seenIn[row] = k;
                }
            }

            start[k + 1] = count;
            if (start[k] == count)
                continue;
            rows.AsSpan(start[k]..count).Sort();
            int parent = rows[start[k]];
            nextChild[k] = firstChild[parent];
            firstChild[parent] = k;
        }

        return new FactorPattern(start, rows);
    }

    /// <summary>Place of the entry of two rows, of which one may be beyond the matrix (the reference node); the dummy
    /// when both are.</summary>
    public int EntryOf(int a, int b)
    {
        int column = Math.Min(a, b);
        int row = Math.Max(a, b);
        if (row >= Size)
            return EntryCount + Math.Min(column, Size);
        int place = Rows.AsSpan(ColumnStart[column]..ColumnStart[column + 1]).IndexOf(row);
        return place >= 0
            ? ColumnStart[column] + place
            : throw new InvalidOperationException("The pattern lacks an entry.");
    }
}
