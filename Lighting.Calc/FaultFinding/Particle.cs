namespace Lighting.Calc.FaultFinding;

/// <summary>A point of the posterior: a severity, or a place between two neighbouring ones.</summary>
/// <param name="Family">Index of the fault's family.</param>
/// <param name="Low">Index of the milder member.</param>
/// <param name="High">Index of the graver member, the same one at a severity that was solved.</param>
/// <param name="Part">Way from the one to the other, 0 to 1; in the logarithm of a resistance.</param>
/// <param name="Prior">Prior probability.</param>
/// <param name="Before">Index of the member before the milder one, where there is one; else its own.</param>
/// <param name="After">Index of the member after the graver one, where there is one; else its own.</param>
internal readonly record struct Particle(int Family, int Low, int High, double Part, double Prior, int Before, int After)
{
    // Between severities a reading is known to about this share of their difference.
    private const double Interpolation = 0.03;

    /// <summary>The prediction of a test.</summary>
    public Prediction Of(Column column) => new(
        Of(column.Value), SigmaOf(column), Of(column.Battery), Draw(column, 0), Draw(column, 1), Draw(column, 2));

    // By the cubic of Catmull and Rom through the four nearest severities.
    private double Of(float[] column)
    {
        double low = column[Low];
        if (Part == 0)
            return low;
        double high = column[High], before = column[Before], after = column[After];
        return low + 0.5 * Part * (high - before + Part * (2 * before - 5 * low + 4 * high - after + Part * (3 * (low - high) + after - before)));
    }

    // With that of the interpolation.
    private double SigmaOf(Column column)
    {
        double low = column.Sigma[Low];
        if (Part == 0)
            return low;
        double sigma = low + Part * (column.Sigma[High] - low), step = Interpolation * (column.Value[High] - column.Value[Low]);
        return Math.Sqrt(sigma * sigma + step * step);
    }

    private double Draw(Column column, int pair) => column.Draws.Length > 0 ? column.Draws[pair][Low] + Part * (column.Draws[pair][High] - column.Draws[pair][Low]) : 0;
}
