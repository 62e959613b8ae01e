using UnitsNet;

namespace Lighting.Calc;

/// <summary>Annealed copper (100 % IACS): resistivity and its change with temperature.</summary>
/// <remarks>
/// Formula: R(T) = ρ20 · L / A · (1 + α20 · (T − 20 °C)), linear in temperature.
/// Source: IEC 60028 and NBS Handbook 100, ρ20 = 1/58 Ω·mm²/m = 1.7241e-8 Ω·m, α20 = 0.00393 /K.
/// Valid from −60 °C to 250 °C, the span in which the linear form is used for cables.
/// </remarks>
internal static class Copper
{
    internal const double ResistivityOhmMetresAt20 = 1e-6 / 58;
    internal const double TemperatureCoefficientPerKelvinAt20 = 0.00393;
    internal const double LowestCelsius = -60;
    internal const double HighestCelsius = 250;

    /// <summary>Volume resistivity at 20 °C: 1.7241e-8 Ω·m (IEC 60028).</summary>
    public static ElectricResistivity ResistivityAt20Celsius =>
        ElectricResistivity.FromOhmMeters(ResistivityOhmMetresAt20);

    /// <summary>Resistance of copper at a temperature relative to that at 20 °C.</summary>
    /// <returns>R(T)/R(20 °C), as a ratio (1 at 20 °C).</returns>
    public static Ratio ResistanceFactor(Temperature temperature)
    {
        double celsius = temperature.DegreesCelsius;
        if (!(celsius >= LowestCelsius && celsius <= HighestCelsius))
            throw new ArgumentOutOfRangeException(
                nameof(temperature),
                celsius,
                FormattableString.Invariant(
                    $"Conductor temperature must be between {LowestCelsius} °C and {HighestCelsius} °C."
                )
            );
        return Ratio.FromDecimalFractions(ResistanceFactorAt(celsius));
    }

    /// <summary>Resistance of a solid conductor of annealed copper.</summary>
    /// <returns>The resistance, in ohms, of this one conductor (a return is separate).</returns>
    public static ElectricResistance Resistance(Length length, Area area, Temperature temperature)
    {
        if (!(length.Meters >= 0))
            throw new ArgumentOutOfRangeException(nameof(length), length, "Length must be zero or more.");
        if (!(area.SquareMeters > 0))
            throw new ArgumentOutOfRangeException(nameof(area), area, "Area must be greater than zero.");
        double factor = ResistanceFactor(temperature).DecimalFractions;
        return ElectricResistance.FromOhms(ResistivityOhmMetresAt20 * length.Meters / area.SquareMeters * factor);
    }

    internal static double ResistanceFactorAt(double celsius) =>
        1 + TemperatureCoefficientPerKelvinAt20 * (celsius - 20);
}
