using MathNet.Numerics.Distributions;

namespace Lighting.Calc;

/// <summary>The inverse distribution function of a spread, tabulated: what turns a uniform number into a part's
/// value.</summary>
/// <remarks>
/// 4,096 equal steps of probability, straight lines between. The distributions are MathNet's. Their logarithms and
/// exponentials are the platform's and may differ in the last digit from one machine to the next; the tabulated values
/// are rounded to multiples of 2^-26 (1.5e-8), which leaves the same table everywhere, and reading it is exact
/// arithmetic.
/// </remarks>
internal sealed class QuantileTable
{
    private const int Steps = 4096;
    private const double Grain = 1 << 26;
    private const double LimitSigmas = 2;

    private readonly double[] _values = new double[Steps + 1];

    public QuantileTable(PartSpread spread)
    {
        for (int i = 0; i <= Steps; i++)
            _values[i] = Math.Round(Exact(spread, (double)i / Steps) * Grain) / Grain;
    }

    /// <param name="probability">0 to below 1.</param>
    public double At(double probability)
    {
        double place = probability * Steps;
        int step = (int)place;
        double low = _values[step];
        return low + (place - step) * (_values[step + 1] - low);
    }

    private static double Exact(PartSpread spread, double p)
    {
        double low = spread.Low,
            high = spread.High,
            listed = spread.Listed;
        if (high - low < 1e-12)
            return listed;
        return spread.Shape switch
        {
            SpreadShape.Uniform => ContinuousUniform.InvCDF(low, high, p),
            SpreadShape.Triangular => Triangular.InvCDF(low, high, listed, p),
            SpreadShape.Normal => Side(p, z => listed + z * (z < 0 ? listed - low : high - listed) / LimitSigmas),
            SpreadShape.LogNormal => Side(
                p,
                z => LogNormal.InvCDF(0, Math.Log(z < 0 ? 1 / low : high) / LimitSigmas, Normal.CDF(0, 1, z))
            ),
            _ => throw new InvalidOperationException($"Unknown shape {spread.Shape}."),
        };
    }

    // The normal distribution with its tails beyond the limits cut off.
    private static double Side(double p, Func<double, double> at)
    {
        double tail = Normal.CDF(0, 1, -LimitSigmas);
        double z = p switch
        {
            0 => -LimitSigmas,
            1 => LimitSigmas,
            _ => Normal.InvCDF(0, 1, tail + p * (1 - 2 * tail)),
        };
        return at(z);
    }
}
