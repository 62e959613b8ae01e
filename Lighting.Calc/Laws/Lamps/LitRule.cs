using UnitsNet;

namespace Lighting.Calc;

/// <summary>Whether a load is on: one rule for lists, visual readings and faults.</summary>
/// <remarks>
/// A lamp is lit from 3 % of its light at the full supply voltage: common practice, no source. A load without light is
/// on from the voltage at which a filament would be lit by the exponent law, 36 %.
/// </remarks>
internal static class LitRule
{
    /// <summary>Share of its light at the full supply voltage below which a lamp is dark.</summary>
    public const double DarkBelow = 0.03;

    private static readonly double s_onFrom = Math.Pow(DarkBelow, 1 / FilamentLaw.LightExponent);

    /// <summary>Whether a load is on.</summary>
    /// <param name="load">The load.</param>
    /// <param name="voltage">Voltage across it, feed to return.</param>
    /// <param name="full">The full supply voltage in the same direction, above zero.</param>
    public static bool IsLit(LampSpecification load, ElectricPotential voltage, ElectricPotential full) =>
        load.RelativeLightAt(voltage) is { } light && load.RelativeLightAt(full) is { DecimalFractions: > 0 } all
            ? light.DecimalFractions > DarkBelow * all.DecimalFractions
            : Math.Abs(voltage.Volts) > s_onFrom * full.Volts;
}
