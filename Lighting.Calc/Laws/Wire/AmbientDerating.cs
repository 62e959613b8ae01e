using UnitsNet;

namespace Lighting.Calc;

/// <summary>Ambient derating of the current rating: f = sqrt((Tmax − Ta)/(Tmax − Tref)).</summary>
/// <remarks>
/// Heat dissipated is proportional to the temperature rise, heat produced to the square of the current.
/// Symbols: Tmax limit of the insulation, Ta ambient, Tref ambient of the printed rating, all °C.
/// Source: IEC 60364-5-52 / VDE 0298-4 (form from memory; its printed factors in tables/ambient-derating.csv are met
/// within 0.01). Valid from −40 °C up to the limit; at and above the limit the factor is zero.
/// </remarks>
internal static class AmbientDerating
{
    internal const double LowestCelsius = -40;

    /// <summary>The factor on a printed rating.</summary>
    /// <param name="conductorLimit">Limit of the insulation, above <paramref name="referenceAmbient"/>.</param>
    /// <param name="referenceAmbient">Ambient of the printed rating.</param>
    /// <param name="ambient">Ambient, −40 °C and above.</param>
    /// <returns>The factor, zero or more; above one in air cooler than the reference.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Ratio Factor(Temperature conductorLimit, Temperature referenceAmbient, Temperature ambient)
    {
        double limit = conductorLimit.DegreesCelsius,
            reference = referenceAmbient.DegreesCelsius,
            celsius = ambient.DegreesCelsius;
        if (!(celsius >= LowestCelsius))
            throw new ArgumentOutOfRangeException(
                nameof(ambient),
                celsius,
                FormattableString.Invariant($"Ambient temperature must be {LowestCelsius} °C or more.")
            );
        if (!(limit > reference))
            throw new ArgumentOutOfRangeException(
                nameof(conductorLimit),
                limit,
                "Conductor limit must be above the reference ambient."
            );
        return Ratio.FromDecimalFractions(Math.Sqrt(Math.Max(0, (limit - celsius) / (limit - reference))));
    }
}
