namespace Lighting.Calc;

/// <summary>Tungsten filament: I = In·(V/Vn)^k with k about 0.55, In at Vn being the published reference
/// point.</summary>
/// <remarks>
/// Source of the exponents: tables/lamp-exponents.csv (vehicle practice 0.55; the IES Lighting Handbook gives
/// 0.541 for gas-filled and 0.580 for vacuum lamps). Good to about ±2 % from half to 1.2 times the reference voltage.
/// Below the voltage at which the law's resistance V/I would fall under the cold filament's, the filament is cold and
/// the law is that of a resistor. Symmetrical: independent of polarity.
/// </remarks>
internal static class FilamentLaw
{
    public const double CurrentExponent = 0.55;
    public const double LightExponent = 3.4;
    public const double LifeExponent = -13;

    /// <summary>Hot to cold resistance at the reference point, the middle of the published 10 to 15.</summary>
    public const double HotToColdRatio = 12;

    /// <summary>V/Vn below which the filament counts as cold: (1/12)^(1/0.45), about 0.4 %.</summary>
    public static readonly double ColdVoltsRatio = Math.Pow(1 / HotToColdRatio, 1 / (1 - CurrentExponent));

    public static LawPoint At(double volts, double referenceVolts, double referenceAmperes)
    {
        double ratio = Math.Abs(volts) / referenceVolts;
        if (ratio <= ColdVoltsRatio)
        {
            double coldSiemens = referenceAmperes / referenceVolts * HotToColdRatio;
            return new LawPoint(coldSiemens * volts, coldSiemens);
        }

        double current = referenceAmperes * Math.Pow(ratio, CurrentExponent);
        return new LawPoint(Math.CopySign(current, volts), CurrentExponent * current / Math.Abs(volts));
    }

    /// <summary>Light relative to that at the reference voltage: (V/Vn)^3.4.</summary>
    public static double RelativeLight(double volts, double referenceVolts) =>
        Math.Pow(Math.Abs(volts) / referenceVolts, LightExponent);

    /// <summary>Co-content ∫₀ᵛ I dV of <see cref="At"/>, in watts.</summary>
    public static double CoContentWatts(double volts, double referenceVolts, double referenceAmperes)
    {
        double ratio = Math.Abs(volts) / referenceVolts;
        double coldRatio = Math.Min(ratio, ColdVoltsRatio);
        double cold = HotToColdRatio / 2 * coldRatio * coldRatio;
        double hot =
            (
                Math.Pow(Math.Max(ratio, ColdVoltsRatio), CurrentExponent + 1)
                - Math.Pow(ColdVoltsRatio, CurrentExponent + 1)
            ) / (CurrentExponent + 1);
        return referenceVolts * referenceAmperes * (cold + hot);
    }
}
