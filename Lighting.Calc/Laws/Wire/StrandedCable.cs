using System.Collections.Immutable;
using System.Globalization;
using UnitsNet;
using UnitsNet.Units;

namespace Lighting.Calc;

/// <summary>Cable by the count and the diameter of its strands: A = n·π/4·d².</summary>
/// <remarks>
/// Symbols: A copper area; n strands; d diameter of one. A construction of tables/conductors-strands.csv has its
/// nominal area and, where one is published, its ohm/km. Any other, as one that was counted and measured, is annealed
/// copper of the area with the 2 % that ASTM B8 allows for the lay.
/// </remarks>
public static class StrandedCable
{
    private const double MillimetresAnInch = 25.4;

    // Figures below the first are taken for inches, from the second for millimetres; between, the unit is needed.
    private const double ThickestInch = 0.05;
    private const double ThinnestMillimetre = 0.1;

    private static readonly ImmutableArray<Printed> s_printed =
    [
        .. PublishedTable
            .Load("conductors-strands")
            .Read()
            .Select(r => new Printed(
                (int)r.Number("strands"),
                r.Number("strand_diameter"),
                r.Text("unit") == "in",
                r.NumberOrNull("nominal_mm2"),
                r.NumberOrNull("max_ohm_per_km")
            )),
    ];

    /// <summary>The constructions of the table.</summary>
    internal static IEnumerable<WireSize> Listed =>
        s_printed.Select(p =>
            Of(p.Strands, new Length(p.Diameter, p.IsInch ? LengthUnit.Inch : LengthUnit.Millimeter))
        );

    /// <summary>The cable of a count of strands.</summary>
    /// <param name="strands">Number of strands, 1 to 1000.</param>
    /// <param name="diameter">Diameter of one bare strand, 0.05 mm to 5 mm; in inches it makes an inch size, such as
    /// <c>14/.012</c>, in any other unit a metric one, such as <c>14/0.30</c>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static WireSize Of(int strands, Length diameter)
    {
        if (strands is not (>= 1 and <= 1000))
            throw new ArgumentOutOfRangeException(nameof(strands), strands, "Strands must be between 1 and 1000.");
        bool isInch = diameter.Unit == LengthUnit.Inch;
        // No more digits than the name has, so that the name means the same.
        double written = isInch ? Math.Round(diameter.Inches, 5) : Math.Round(diameter.Millimeters, 4);
        double millimetres = isInch ? written * MillimetresAnInch : written;
        if (!(millimetres is >= 0.05 and <= 5))
            throw new ArgumentOutOfRangeException(
                nameof(diameter),
                diameter,
                "Strand diameter must be between 0.05 mm and 5 mm."
            );
        Printed? printed = s_printed.FirstOrDefault(p =>
            p.Strands == strands && p.IsInch == isInch && Math.Abs(p.Diameter - written) < 1e-6
        );
        double area = strands * Math.PI / 4 * millimetres * millimetres;
        double ohms = Copper.ResistivityOhmMetresAt20 / (area * 1e-6) * AmericanWireGauge.StrandingFactor;
        return new WireSize(
            Name(strands, written, isInch),
            isInch ? WireConstruction.InchStrands : WireConstruction.MetricStrands,
            Area.FromSquareMillimeters(printed?.NominalArea ?? area),
            printed?.OhmsPerKilometre / 1000 ?? ohms
        );
    }

    /// <summary>The unit of a diameter that states none: inches below 0.05, millimetres from 0.1; null
    /// between.</summary>
    internal static LengthUnit? UnitOf(double diameter) =>
        diameter < ThickestInch ? LengthUnit.Inch
        : diameter >= ThinnestMillimetre ? LengthUnit.Millimeter
        : null;

    private static string Name(int strands, double diameter, bool isInch)
    {
        string figure = diameter.ToString(isInch ? ".000##" : "0.00##", CultureInfo.InvariantCulture);
        string unit = UnitOf(diameter) is { } known && known == LengthUnit.Inch == isInch ? "" : isInch ? " in" : " mm";
        return string.Create(CultureInfo.InvariantCulture, $"{strands}/{figure}{unit}");
    }

    private sealed record Printed(
        int Strands,
        double Diameter,
        bool IsInch,
        double? NominalArea,
        double? OhmsPerKilometre
    );
}
