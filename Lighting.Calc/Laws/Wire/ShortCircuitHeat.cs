using UnitsNet;

namespace Lighting.Calc;

/// <summary>The heat a wire withstands in a short circuit: I²·t ≤ k²·S².</summary>
/// <remarks>Symbols: I current, A; t time, s, 5 s at most; S copper area, mm²; k = 115 for PVC on copper, from 70 °C to
/// 160 °C. Source: IEC 60364-4-43, by IEC 60949.</remarks>
internal static class ShortCircuitHeat
{
    /// <summary>The longest time for which the law, without heat given off, is valid.</summary>
    public const double LongestSeconds = 5;

    private const double PvcOnCopper = 115;

    /// <summary>Ampere-squared seconds that an area withstands.</summary>
    public static double AmpereSquaredSeconds(Area area) =>
        PvcOnCopper * PvcOnCopper * area.SquareMillimeters * area.SquareMillimeters;

    /// <summary>The smallest area that withstands a current for a time.</summary>
    public static Area LeastArea(ElectricCurrent current, Duration time) =>
        Area.FromSquareMillimeters(current.Amperes * Math.Sqrt(time.Seconds) / PvcOnCopper);
}
