// Where everything stands in the factor LDLᵀ of a sparse symmetric matrix: a flat program for Factor to run.
namespace Lighting.Calc.Network;

/// <summary>Pattern of the strict lower triangle by columns, and where each update of the elimination lands.</summary>
internal sealed class FactorPattern
{
    /// <param name="columns">For each pivot the rows below the diagonal, ascending, fill included.</param>
    public FactorPattern(int[][] columns)
    {
        Size = columns.Length;
        ColumnStart = new int[Size + 1];
        for (int k = 0; k < Size; k++)
            ColumnStart[k + 1] = ColumnStart[k] + columns[k].Length;
        Rows = [.. columns.SelectMany(c => c)];

        var targets = new List<int>();
        foreach (int[] rows in columns)
        {
            for (int p = 0; p < rows.Length; p++)
            {
                for (int q = p + 1; q < rows.Length; q++)
                    targets.Add(EntryOf(rows[p], rows[q]));
            }
        }

        Targets = [.. targets];
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
