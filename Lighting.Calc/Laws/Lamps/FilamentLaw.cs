namespace Lighting.Calc;

/// <summary>Tungsten filament: I = In·(V/Vn)^k with k about 0.55, In at Vn being the published reference point; below
/// 0.7 Vn the heat balance of <see cref="FilamentHeat"/>.</summary>
/// <remarks>
/// Source of the exponents: tables/lamp-exponents.csv (vehicle practice 0.55; the IES Lighting Handbook gives 0.541 for
/// gas-filled and 0.580 for vacuum lamps). Good to about ±2 % from 0.7 to 1.2 times the reference voltage; of a
/// measured bulb of 2.5 V it is 7 % low at 0.4 and 21 % at a tenth. Symmetrical: independent of polarity.
/// </remarks>
internal static class FilamentLaw
{
    public const double CurrentExponent = 0.55;
    public const double LightExponent = 3.4;

    /// <summary>Exponent of the light of a halogen filament.</summary>
    public const double HalogenLightExponent = 3;
    public const double LifeExponent = -13;

    /// <summary>Hot to cold resistance at the reference point, the middle of the published 10 to 15.</summary>
    public const double HotToColdRatio = 12;

    /// <summary>V/Vn below which the heat balance takes the place of the exponent law.</summary>
    public const double LowVoltsRatio = 0.7;

    /// <summary>V/Vn below which a halogen cycle no longer returns the tungsten, so that no life is known.</summary>
    public const double HalogenCycleRatio = 0.9;

    private static readonly double s_lowArea = FilamentHeat.AreaTo(LowVoltsRatio);
    private static readonly double s_lowPower = Math.Pow(LowVoltsRatio, CurrentExponent + 1);
    private static readonly double s_lowResistance = Math.Pow(LowVoltsRatio, 1 - CurrentExponent);

    public static LawPoint At(double volts, double referenceVolts, double referenceAmperes)
    {
        double ratio = Math.Abs(volts) / referenceVolts;
        if (ratio < LowVoltsRatio)
        {
            (double share, double slope) = FilamentHeat.At(ratio);
            return new LawPoint(
                Math.CopySign(referenceAmperes * share, volts),
                referenceAmperes / referenceVolts * slope
            );
        }

        double current = referenceAmperes * Math.Pow(ratio, CurrentExponent);
        return new LawPoint(Math.CopySign(current, volts), CurrentExponent * current / Math.Abs(volts));
    }

    /// <summary>Light relative to that at the reference voltage: (V/Vn)^3.4, of a halogen filament (V/Vn)^3.</summary>
    public static double RelativeLight(LampType type, double volts, double referenceVolts) =>
        Math.Pow(
            Math.Abs(volts) / referenceVolts,
            type == LampType.Halogen ? HalogenLightExponent : LightExponent
        );

    /// <summary>Power over that at the reference point, from the resistance over that there.</summary>
    public static double PowerAt(double resistanceRatio) =>
        resistanceRatio < s_lowResistance
            ? FilamentHeat.PowerAt(resistanceRatio)
            : Math.Pow(resistanceRatio, (1 + CurrentExponent) / (1 - CurrentExponent));

    /// <summary>Co-content ∫₀ᵛ I dV of <see cref="At"/>, in watts.</summary>
    public static double CoContentWatts(double volts, double referenceVolts, double referenceAmperes)
    {
        double ratio = Math.Abs(volts) / referenceVolts;
        return referenceVolts
            * referenceAmperes
            * (
                ratio < LowVoltsRatio
                    ? FilamentHeat.AreaTo(ratio)
                    : s_lowArea + (Math.Pow(ratio, CurrentExponent + 1) - s_lowPower) / (CurrentExponent + 1)
            );
    }
}
