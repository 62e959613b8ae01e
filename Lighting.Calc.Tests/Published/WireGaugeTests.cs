using System.Globalization;
using UnitsNet;

namespace Lighting.Calc.Tests.Published;

/// <summary>
/// The gauge formula (ASTM B258) and annealed copper (IEC 60028) against two printed wire tables: NBS Handbook 100
/// (diameters rounded before the ohms were computed, hence 0.8 %) and NBS Circular 31 (0.1 %). The printed values are
/// the check columns of tables/conductors-awg.csv, with the status of each in its source column.
/// </summary>
public class WireGaugeTests
{
    public static TheoryData<int> Gauges =>
        [.. Publication.Rows("conductors-awg").Select(r => int.Parse(r.Text("gauge"), CultureInfo.InvariantCulture))];

    [Theory]
    [MemberData(nameof(Gauges))]
    [Against("wire gauge", "NBS Handbook 100, diameters", CheckKind.Model)]
    public void ASTM_B258_formula_gives_the_diameter_NBS_Handbook_100_prints(int gauge) =>
        Near(
            Row(gauge).Number("printed_diameter_mil"),
            AmericanWireGauge.Diameter(gauge).Inches * 1000,
            Row(gauge).Text("printed_diameter_mil")
        );

    // The handbook squares its rounded diameter: up to 1.0 % at 29 gauge (printed 128, formula 126.7).
    [Theory]
    [MemberData(nameof(Gauges))]
    [Against("wire gauge", "NBS Handbook 100, circular mils of its rounded diameters", CheckKind.Model)]
    public void ASTM_B258_formula_gives_the_circular_mils_NBS_Handbook_100_prints_within_1_0_percent(int gauge)
    {
        double mils = AmericanWireGauge.Diameter(gauge).Inches * 1000;
        Within(Row(gauge).Number("printed_area_cmil"), mils * mils, 0.010);
    }

    [Theory]
    [MemberData(nameof(Gauges))]
    [Against("wire gauge", "NBS Handbook 100, ohms of its rounded diameters", CheckKind.Model)]
    public void Resistance_agrees_with_NBS_Handbook_100_within_0_8_percent(int gauge) =>
        Within(Row(gauge).Number("printed_ohm_per_kft_handbook_100"), OhmsPerThousandFeet(gauge, 20), 0.008);

    [Theory]
    [MemberData(nameof(Gauges))]
    [Against("wire gauge", "NBS Circular 31, ohms", CheckKind.Model)]
    public void Resistance_agrees_with_NBS_Circular_31_within_0_1_percent(int gauge) =>
        Within(Row(gauge).Number("printed_ohm_per_kft_circular_31"), OhmsPerThousandFeet(gauge, 20), 0.001);

    // NFPA 70 (NEC) chapter 9 table 8, direct current, uncoated solid copper at 75 °C; printed to three figures. No. 16
    // is printed 4.89 where the model gives 4.884 (Handbook 100's rounded 4.02 ohm times 1.2161 is 4.889).
    [Theory]
    [InlineData(18, 7.77, 0.005)]
    [InlineData(16, 4.89, 0.0066)]
    [InlineData(14, 3.07, 0.005)]
    [InlineData(12, 1.93, 0.005)]
    [InlineData(10, 1.21, 0.005)]
    [InlineData(8, 0.764, 0.0005)]
    [Against("wire gauge", "NEC, chapter 9 table 8, solid, 75 °C", CheckKind.Model)]
    public void Resistance_at_75_C_agrees_with_NEC_chapter_9_table_8_solid(
        int gauge,
        double printedOhmPerThousandFeet,
        double printedRounding
    ) => Publication.Meets(printedOhmPerThousandFeet, OhmsPerThousandFeet(gauge, 75), printedRounding);

    // The same table, stranded (seven strands): 2.2 to 2.3 % over solid, where ASTM B8 allows 2 %. The model takes the
    // 2 %, so it lies up to 0.4 % under the printed values.
    [Theory]
    [InlineData(18, 7.95)]
    [InlineData(16, 4.99)]
    [InlineData(14, 3.14)]
    [InlineData(12, 1.98)]
    [InlineData(10, 1.24)]
    [InlineData(8, 0.778)]
    [InlineData(6, 0.491)]
    [InlineData(4, 0.308)]
    [Against("wire gauge", "NEC, chapter 9 table 8, stranded, 75 °C", CheckKind.Model)]
    public void Resistance_at_75_C_is_within_0_5_percent_of_NEC_chapter_9_table_8_stranded(
        int gauge,
        double printedOhmPerThousandFeet
    )
    {
        double ohms = AmericanWireGauge
            .Stranded(gauge)
            .Resistance(Length.FromFeet(1000), Temperature.FromDegreesCelsius(75))
            .Ohms;
        Within(printedOhmPerThousandFeet, ohms, 0.005);
    }

    [Fact]
    [Against("wire gauge", "ASTM B258, ratio of two gauges", CheckKind.Arithmetic)]
    public void ASTM_B258_defines_the_ratio_of_one_gauge_to_the_next_as_the_39th_root_of_92() =>
        Publication.Meets(1.1229322, AmericanWireGauge.Diameter(10) / AmericanWireGauge.Diameter(11), 5e-8);

    private static TableRow Row(int gauge) =>
        Publication.Rows("conductors-awg").Single(r => r.Text("gauge") == gauge.ToString(CultureInfo.InvariantCulture));

    private static double OhmsPerThousandFeet(int gauge, double celsius) =>
        AmericanWireGauge.Solid(gauge).Resistance(Length.FromFeet(1000), Temperature.FromDegreesCelsius(celsius)).Ohms;

    private static void Within(double printed, double computed, double share) =>
        Publication.Meets(printed, computed, printed * share);

    // Half a unit of the last printed digit, with a little for the printed table's own rounding of halves.
    private static void Near(double printed, double computed, string printedText)
    {
        int decimals = printedText.Length - printedText.IndexOf('.', StringComparison.Ordinal) - 1;
        double half = 0.5 * Math.Pow(10, -decimals);
        Publication.Meets(printed, computed, half * 1.001);
    }
}
