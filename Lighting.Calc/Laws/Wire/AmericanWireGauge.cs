using UnitsNet;

namespace Lighting.Calc;

/// <summary>American wire gauge: d = 0.127 mm · 92^((36 − n)/39).</summary>
/// <remarks>
/// Source: ASTM B258 (36 gauge is 0.005 in, 4/0 gauge 0.46 in, 39 equal ratios between). Resistance of a solid gauge
/// is that of annealed copper of the formula's area; a stranded gauge has the 2 % that ASTM B8 allows for the lay.
/// </remarks>
public static class AmericanWireGauge
{
    /// <summary>Largest gauge listed, 4.</summary>
    public const int Largest = 4;

    /// <summary>Smallest gauge listed, 30.</summary>
    public const int Smallest = 30;

    internal const double StrandingFactor = 1.02;

    /// <summary>Diameter of a solid gauge.</summary>
    /// <param name="gauge">Gauge number, 4 to 30.</param>
    /// <exception cref="ArgumentOutOfRangeException">The gauge is not 4 to 30.</exception>
    public static Length Diameter(int gauge) =>
        Length.FromMillimeters(0.127 * Math.Pow(92, (36 - Checked(gauge)) / 39.0));

    /// <summary>The solid conductor of a gauge.</summary>
    /// <param name="gauge">Gauge number, 4 to 30.</param>
    /// <exception cref="ArgumentOutOfRangeException">The gauge is not 4 to 30.</exception>
    public static WireSize Solid(int gauge) => Make(gauge, $"{gauge} AWG", WireConstruction.SolidGauge, 1);

    /// <summary>The stranded conductor of a gauge.</summary>
    /// <param name="gauge">Gauge number, 4 to 30.</param>
    /// <exception cref="ArgumentOutOfRangeException">The gauge is not 4 to 30.</exception>
    public static WireSize Stranded(int gauge) =>
        Make(gauge, $"{gauge} AWG stranded", WireConstruction.StrandedGauge, StrandingFactor);

    private static WireSize Make(int gauge, string name, WireConstruction construction, double factor)
    {
        double diameter = Diameter(gauge).Meters;
        double area = Math.PI / 4 * diameter * diameter;
        return new WireSize(
            name,
            construction,
            Area.FromSquareMeters(area),
            Copper.ResistivityOhmMetresAt20 / area * factor
        );
    }

    private static int Checked(int gauge) =>
        gauge is >= Largest and <= Smallest
            ? gauge
            : throw new ArgumentOutOfRangeException(
                nameof(gauge),
                gauge,
                $"Gauge must be between {Largest} and {Smallest} AWG."
            );
}
