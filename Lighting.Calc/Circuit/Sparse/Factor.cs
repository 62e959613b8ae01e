// Numbers of a sparse symmetric system and its solution by LDLᵀ without allocation.
namespace Lighting.Calc;

/// <summary>Workspace of one system: fill in diagonal, entries and right-hand side, then eliminate and
/// substitute.</summary>
/// <remarks>
/// Positive pivots are the test of a positive definite matrix (Sylvester's law of inertia). No pivoting: a positive
/// definite matrix needs none, and any other is not solved but reported.
/// </remarks>
internal sealed class Factor
{
    private readonly double[] inversePivot;
    private FactorPattern pattern = FactorPattern.Empty;

    /// <param name="largest">The most unknowns of any pattern it will be given.</param>
    public Factor(int largest)
    {
        inversePivot = new double[largest];
        Diagonal = new double[largest + 1];
        Right = new double[largest + 1];
    }

    /// <summary>Diagonal; the place after the last is a dummy for the reference node.</summary>
    public double[] Diagonal { get; }

    /// <summary>Entries below the diagonal by the pattern, then a dummy.</summary>
    public double[] Entries { get; private set; } = [];

    /// <summary>Right-hand side, by <see cref="Solve"/> replaced by the solution; then a dummy.</summary>
    public double[] Right { get; }

    /// <summary>Turns to another system; its numbers are then to be filled in.</summary>
    public void Take(FactorPattern next)
    {
        pattern = next;
        if (Entries.Length <= next.EntryCount)
            Entries = new double[Math.Max(next.EntryCount + 1, 2 * Entries.Length)];
    }

    /// <summary>Eliminates matrix and right-hand side and substitutes back.</summary>
    /// <param name="fixedLast">Voltage of the last unknown where it is known (an ideal source), else NaN.</param>
    /// <returns>False at the first pivot that is not positive: the right-hand side is then of no use.</returns>
    public bool Solve(double fixedLast = double.NaN)
    {
        int size = pattern.Size;
        int[] start = pattern.ColumnStart;
        int[] rows = pattern.Rows;
        int[] targets = pattern.Targets;
        double[] diagonal = Diagonal;
        double[] entries = Entries;
        double[] right = Right;
        int target = 0;
        bool lastIsFixed = !double.IsNaN(fixedLast);
        for (int k = 0; k < size; k++)
        {
            if (lastIsFixed && k == size - 1)
                break;
            double pivot = diagonal[k];
            if (!(pivot > 0))
                return false;
            double inverse = 1 / pivot;
            inversePivot[k] = inverse;
            double rightK = right[k];
            int end = start[k + 1];
            for (int p = start[k]; p < end; p++)
            {
                double entry = entries[p];
                double multiplier = entry * inverse;
                int row = rows[p];
                diagonal[row] -= multiplier * entry;
                right[row] -= multiplier * rightK;
                for (int q = p + 1; q < end; q++)
                    entries[targets[target++]] -= multiplier * entries[q];
                entries[p] = multiplier;
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
                value -= entries[p] * right[rows[p]];
            right[k] = value;
        }

        return true;
    }
}
