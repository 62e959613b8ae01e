namespace Lighting.Calc;

/// <summary>Visual scale dark, dim, good, bright: the light against the light expected, on a logarithmic
/// scale.</summary>
/// <remarks>
/// Dark below 3 %, dim below 55 %, bright above 170 % of the light expected, and a visual judgement to one third:
/// common practice, no source. By the filament law 55 % of the light is 84 % of the voltage.
/// </remarks>
internal static class LookScale
{
    /// <summary>Standard deviation of the logarithm of the light as judged visually.</summary>
    public const double EyeSigma = 0.3;

    /// <summary>Logarithm that represents no light at all.</summary>
    public const double NoLight = -14;

    private static readonly double[] s_limits = [Math.Log(LitRule.DarkBelow), Math.Log(0.55), Math.Log(1.7)];

    public static double Logarithm(double light) => light > 1e-6 ? Math.Log(light) : NoLight;

    /// <summary>Probability that a light is called so.</summary>
    /// <param name="look">What it is called.</param>
    /// <param name="logLight">Logarithm of its light against the light expected.</param>
    /// <param name="sigma">Standard deviation of that by the model's tolerance.</param>
    public static double Probability(Brightness look, double logLight, double sigma)
    {
        double total = Math.Sqrt(sigma * sigma + EyeSigma * EyeSigma);
        double below =
            look == Brightness.Dark ? 0 : StandardNormal.Cumulative((s_limits[(int)look - 1] - logLight) / total);
        double upTo =
            look == Brightness.Bright ? 1 : StandardNormal.Cumulative((s_limits[(int)look] - logLight) / total);
        return Math.Max(0, upTo - below);
    }

    /// <summary>The likeliest word.</summary>
    public static Brightness Of(double logLight) => (Brightness)s_limits.Count(limit => logLight > limit);
}
