namespace Lighting.Calc;

/// <summary>A point of the posterior: a severity, or a place between two neighbouring ones.</summary>
/// <param name="Family">Index of the fault's family.</param>
/// <param name="Low">Index of the milder member.</param>
/// <param name="High">Index of the graver member, the same one at a severity that was solved.</param>
/// <param name="Part">Way from the one to the other, 0 to 1; in the logarithm of a resistance.</param>
/// <param name="Prior">Prior probability.</param>
/// <param name="Before">Index of the member before the milder one, where there is one; else its own.</param>
/// <param name="After">Index of the member after the graver one, where there is one; else its own.</param>
internal readonly record struct Particle(
    int Family,
    int Low,
    int High,
    double Part,
    double Prior,
    int Before,
    int After
)
{
    // Between severities a reading is known to about this share of their difference, and where a lamp collapses the
    // curve has a kink: the cubic may be off by as much as it bends.
    private const double Interpolation = 0.04;

    /// <summary>The prediction of a test.</summary>
    public Prediction Of(Column column)
    {
        if (Part == 0)
            return column.At(Low);
        double value = Of(column.Value),
            unknown =
                Interpolation * Math.Abs(column.Value[High] - column.Value[Low])
                + Math.Abs(value - Straight(column.Value)),
            own = column.Own.Length > 0 ? Straight(column.Own) : 0;
        return new(
            value,
            Straight(column.Sigma),
            Of(column.Battery),
            Draw(column, 0),
            Draw(column, 1),
            Draw(column, 2),
            Math.Sqrt(unknown * unknown + own * own)
        );
    }

    // By the cubic of Catmull and Rom through the four nearest severities.
    private double Of(float[] column)
    {
        double low = column[Low],
            high = column[High],
            before = column[Before],
            after = column[After];
        return low
            + 0.5
                * Part
                * (
                    high
                    - before
                    + Part * (2 * before - 5 * low + 4 * high - after + Part * (3 * (low - high) + after - before))
                );
    }

    private double Straight(float[] column) => column[Low] + Part * (column[High] - column[Low]);

    private double Draw(Column column, int pair) => column.Draws.Length > 0 ? Straight(column.Draws[pair]) : 0;
}
