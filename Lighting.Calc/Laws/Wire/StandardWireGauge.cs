using System.Collections.Frozen;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Imperial standard wire gauge (SWG), solid conductors.</summary>
/// <remarks>Source: BS 3737:1964, diameters of tables/conductors-swg.csv. Resistance is that of annealed copper of the
/// area. A gauge of this system is larger than the American one of the same number.</remarks>
public static class StandardWireGauge
{
    private static readonly FrozenDictionary<int, double> s_inches = PublishedTable
        .Load("conductors-swg")
        .Read()
        .ToFrozenDictionary(r => (int)r.Number("gauge"), r => r.Number("diameter_in"));

    /// <summary>Largest gauge listed, 0.</summary>
    public const int Largest = 0;

    /// <summary>Smallest gauge listed, 40.</summary>
    public const int Smallest = 40;

    /// <summary>Diameter of a gauge.</summary>
    /// <param name="gauge">Gauge number, 0 to 40.</param>
    /// <exception cref="ArgumentOutOfRangeException">The gauge is not 0 to 40.</exception>
    public static Length Diameter(int gauge) =>
        s_inches.TryGetValue(gauge, out double inches)
            ? Length.FromMillimeters(25.4 * inches)
            : throw new ArgumentOutOfRangeException(
                nameof(gauge),
                gauge,
                $"Gauge must be between {Largest} and {Smallest} SWG."
            );

    /// <summary>The solid conductor of a gauge.</summary>
    /// <param name="gauge">Gauge number, 0 to 40.</param>
    /// <exception cref="ArgumentOutOfRangeException">The gauge is not 0 to 40.</exception>
    public static WireSize Solid(int gauge)
    {
        double diameter = Diameter(gauge).Meters;
        double area = Math.PI / 4 * diameter * diameter;
        return new WireSize(
            $"{gauge} SWG",
            WireConstruction.StandardWireGauge,
            Area.FromSquareMeters(area),
            Copper.ResistivityOhmMetresAt20 / area
        );
    }
}
