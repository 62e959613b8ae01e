namespace Lighting.Calc;

/// <summary>A condition that every good choice meets: Σ coefficient · wire ohms of the run's size ≤ limit.</summary>
/// <param name="Runs">The runs in it.</param>
/// <param name="Coefficients">Above zero, one for each: the least current through the run (then the limit is volts), or 1 (then it is ohms).</param>
/// <param name="Limit">What the wires may take together.</param>
internal sealed record DropRow(int[] Runs, double[] Coefficients, double Limit)
{
    public bool CoveredBy(DropRow other)
    {
        if (other.Limit > Limit)
            return false;
        for (int i = 0; i < Runs.Length; i++)
        {
            int at = Array.IndexOf(other.Runs, Runs[i]);
            if (at < 0 || other.Coefficients[at] < Coefficients[i])
                return false;
        }

        return true;
    }
}
