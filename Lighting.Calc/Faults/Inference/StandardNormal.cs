using MathNet.Numerics.Distributions;

namespace Lighting.Calc;

/// <summary>The standard normal distribution from a table, good to 1e-5: it is evaluated a million times for one choice
/// of a test.</summary>
internal static class StandardNormal
{
    private const int PerUnit = 100;
    private const int Reach = 6;
    private static readonly double[] s_table =
    [
        .. Enumerable.Range(0, 2 * Reach * PerUnit + 2).Select(i => Normal.CDF(0, 1, (double)i / PerUnit - Reach)),
    ];

    public static double Cumulative(double z)
    {
        if (z <= -Reach)
            return 0;
        if (z >= Reach)
            return 1;
        double place = (z + Reach) * PerUnit;
        int below = (int)place;
        return s_table[below] + (place - below) * (s_table[below + 1] - s_table[below]);
    }
}
