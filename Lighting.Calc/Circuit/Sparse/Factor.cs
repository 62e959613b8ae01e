// Conductances of a sparse system and its solution, node by node, without allocation.
namespace Lighting.Calc;

/// <summary>Workspace of one system: fill in conductances and right-hand side, then eliminate and
/// substitute.</summary>
/// <remarks>
/// A node is eliminated by turning the star of its conductances into a mesh: g_ij gains g_ik·g_jk/Σg_k. This is the
/// elimination LDLᵀ of the nodal matrix, but the diagonal, the sum of all that meets in a node, is never kept: without
/// negative slopes nothing is subtracted, and every number has nearly all of its digits, nanoohms beside gigaohms too.
/// Positive pivots are the test of a positive definite matrix (Sylvester's law of inertia). No pivoting: a positive
/// definite matrix needs none, and any other is not solved but reported. Source: A. Rosen, "A new network theorem",
/// 1924; the accuracy: W. K. Grassmann, M. I. Taksar and D. P. Heyman, "Regenerative analysis and steady state
/// distributions for Markov chains", 1985.
/// </remarks>
internal sealed class Factor
{
    private readonly double[] inversePivot;
    private FactorPattern pattern = FactorPattern.Empty;

    /// <param name="largest">The most unknowns of any pattern it will be given.</param>
    public Factor(int largest)
    {
        inversePivot = new double[largest];
        Right = new double[largest + 1];
    }

    /// <summary>Conductances between unknowns by the pattern, then those from each unknown to the reference
    /// node, then a dummy.</summary>
    public double[] Entries { get; private set; } = [];

    /// <summary>Right-hand side, by <see cref="Solve"/> replaced by the solution; then a dummy.</summary>
    public double[] Right { get; }

    /// <summary>Turns to another system; its numbers are then to be filled in.</summary>
    public void Take(FactorPattern next)
    {
        pattern = next;
        if (Entries.Length < next.PlaceCount)
            Entries = new double[Math.Max(next.PlaceCount, 2 * Entries.Length)];
    }

    /// <summary>Eliminates the nodes one by one and substitutes back.</summary>
    /// <param name="fixedLast">Voltage of the last unknown where it is known (an ideal source), else NaN.</param>
    /// <returns>False at the first pivot that is not positive: the right-hand side is then of no use.</returns>
    public bool Solve(double fixedLast = double.NaN)
    {
        int size = pattern.Size;
        int[] start = pattern.ColumnStart;
        int[] rows = pattern.Rows;
        int[] targets = pattern.Targets;
        double[] entries = Entries;
        Span<double> toReference = entries.AsSpan(pattern.EntryCount, size);
        double[] right = Right;
        int target = 0;
        bool lastIsFixed = !double.IsNaN(fixedLast);
        for (int k = 0; k < size; k++)
        {
            if (lastIsFixed && k == size - 1)
                break;
            double own = toReference[k],
                pivot = own;
            int end = start[k + 1];
            for (int p = start[k]; p < end; p++)
                pivot += entries[p];
            if (!(pivot > 0))
                return false;
            double inverse = 1 / pivot;
            inversePivot[k] = inverse;
            double rightK = right[k];
            for (int p = start[k]; p < end; p++)
            {
                double share = entries[p] * inverse;
                int row = rows[p];
                toReference[row] += share * own;
                right[row] += share * rightK;
                for (int q = p + 1; q < end; q++)
                    entries[targets[target++]] += share * entries[q];
                entries[p] = share;
            }
        }

        for (int k = size - 1; k >= 0; k--)
        {
            if (lastIsFixed && k == size - 1)
            {
                right[k] = fixedLast;
                continue;
            }

            double value = right[k] * inversePivot[k];
            for (int p = start[k]; p < start[k + 1]; p++)
                value += entries[p] * right[rows[p]];
            right[k] = value;
        }

        return true;
    }
}
