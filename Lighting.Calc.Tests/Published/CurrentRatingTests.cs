using UnitsNet;

namespace Lighting.Calc.Tests.Published;

/// <summary>Current ratings and their factors against the printed figures, typed here as printed.</summary>
public class CurrentRatingTests
{
    // 33 CFR 183.425 table 5, 80 °C column, 30 °C air (confirmed).
    [Theory]
    [InlineData(18, 15)]
    [InlineData(16, 20)]
    [InlineData(14, 25)]
    [InlineData(12, 35)]
    [InlineData(10, 50)]
    [InlineData(8, 70)]
    [InlineData(6, 100)]
    [InlineData(4, 130)]
    [Against("current rating", "33 CFR 183.425, table 5", CheckKind.Copied)]
    public void Code_of_Federal_Regulations_33_183_425_gauges(int gauge, double printedAmperes)
    {
        foreach (WireSize wire in new[] { AmericanWireGauge.Solid(gauge), AmericanWireGauge.Stranded(gauge) })
        {
            CurrentRating rating = At(wire, 30, 1);
            Assert.Equal(CurrentRatingBasis.Published, rating.Basis);
            Publication.Meets(printedAmperes, rating.Current!.Value.Amperes, 1e-9);
        }
    }

    // DIN VDE 0298-4 table 11 single core in free air, 30 °C, 70 °C PVC (confirmed); 0.5 mm² by a cable maker's sheet
    // of the same standard. JIS C 3406 for 0.85, 1.25, 2, 3, 5, 8 mm² (limits confirmed). Its 40 °C air and 80 °C
    // conductor are from memory: here its 40 K rise is counted from 30 °C like its neighbours', so the printed figure
    // stands at 30 °C and 13.9 A instead of 16 A at 40 °C.
    [Theory]
    [InlineData("0.5 mm2", 12)]
    [InlineData("0.75 mm2", 15)]
    [InlineData("0.85 mm2", 16)]
    [InlineData("1 mm2", 19)]
    [InlineData("1.25 mm2", 21)]
    [InlineData("1.5 mm2", 24)]
    [InlineData("2 mm2", 28)]
    [InlineData("2.5 mm2", 32)]
    [InlineData("3 mm2", 38)]
    [InlineData("4 mm2", 42)]
    [InlineData("5 mm2", 51)]
    [InlineData("6 mm2", 54)]
    [InlineData("8 mm2", 66)]
    [InlineData("10 mm2", 73)]
    [InlineData("16 mm2", 98)]
    [Against("current rating", "DIN VDE 0298-4, and JIS C 3406", CheckKind.Copied)]
    public void DIN_VDE_0298_4_and_JIS_C_3406_metric_sizes(string size, double printedAmperes) =>
        Publication.Meets(printedAmperes, At(Wire(size), 30, 1).Current!.Value.Amperes, 1e-9);

    // IEC 60364-5-52 table B.52.14, PVC 70 °C (from memory): the square-root form meets the rounded figures within
    // 0.01.
    [Theory]
    [InlineData(10, 1.22)]
    [InlineData(20, 1.12)]
    [InlineData(25, 1.06)]
    [InlineData(35, 0.94)]
    [InlineData(40, 0.87)]
    [InlineData(45, 0.79)]
    [InlineData(50, 0.71)]
    [InlineData(55, 0.61)]
    [InlineData(60, 0.50)]
    [Against("ambient factor", "IEC 60364-5-52, table B.52.14 (from memory)", CheckKind.Model)]
    public void IEC_60364_5_52_ambient_factors_of_70_C_insulation(double celsius, double printedFactor) =>
        Publication.Meets(printedFactor, Factor(70, celsius), 0.01);

    // 33 CFR 183.425 table 5 note, engine spaces (50 °C): 0.85 at 105 °C confirmed ("Wire Heat Ratings"), others from
    // memory.
    [Theory]
    [InlineData(60, 0.58)]
    [InlineData(75, 0.75)]
    [InlineData(80, 0.78)]
    [InlineData(90, 0.82)]
    [InlineData(105, 0.85)]
    [InlineData(125, 0.89)]
    [Against("ambient factor", "33 CFR 183.425, engine spaces (partly from memory)", CheckKind.Model)]
    public void Code_of_Federal_Regulations_33_183_425_engine_space_factors(
        double limitCelsius,
        double printedFactor
    ) => Publication.Meets(printedFactor, Factor(limitCelsius, 50), 0.01);

    // The same note worked out for 105 °C insulation: "Wire Heat Ratings", inside and outside of engine spaces.
    [Theory]
    [InlineData(20, 17)]
    [InlineData(25, 21)]
    [InlineData(35, 30)]
    [InlineData(45, 38)]
    [InlineData(60, 51)]
    [InlineData(80, 68)]
    [InlineData(120, 102)]
    [InlineData(160, 136)]
    [Against("ambient factor", "33 CFR 183.425, engine spaces worked out for 105 °C", CheckKind.Model)]
    public void Code_of_Federal_Regulations_33_183_425_in_an_engine_space(double outside, double printedInside) =>
        Publication.MeetsOrMisses(printedInside, outside * Factor(105, 50), 0.55, 0.02);

    // Ampacities aboard ship, reference ambient 45 °C (table of correction factors for ambient air temperatures of a
    // cable maker's technical data).
    [Theory]
    [InlineData(60, new[] { 1.29, 1.15, 1.00, 0.82 })]
    [InlineData(70, new[] { 1.18, 1.10, 1.00, 0.89, 0.77, 0.63 })]
    [InlineData(85, new[] { 1.12, 1.06, 1.00, 0.94, 0.87, 0.79, 0.71, 0.61, 0.50 })]
    [InlineData(90, new[] { 1.10, 1.05, 1.00, 0.94, 0.88, 0.82, 0.74, 0.67, 0.58, 0.47 })]
    [Against("ambient factor", "correction factors for ambient air, marine cable, 45 °C", CheckKind.Model)]
    public void Marine_cable_factors_from_45_C(double limitCelsius, double[] printed)
    {
        for (int i = 0; i < printed.Length; i++)
            if (i != 2)
                Publication.Meets(
                    printed[i],
                    AmbientDerating
                        .Factor(
                            Temperature.FromDegreesCelsius(limitCelsius),
                            Temperature.FromDegreesCelsius(45),
                            Temperature.FromDegreesCelsius(35 + 5 * i)
                        )
                        .DecimalFractions,
                    0.006
                );
    }

    // NEC table 310.15(B)(1), reprinted as table E3705.2 of a residential code: from 10 °C in steps of 5 K, each range
    // by its upper end; reference 30 °C, which is left out.
    [Theory]
    [InlineData(60, new[] { 1.29, 1.22, 1.15, 1.08, 1, 0.91, 0.82, 0.71, 0.58, 0.41 })]
    [InlineData(75, new[] { 1.20, 1.15, 1.11, 1.05, 1, 0.94, 0.88, 0.82, 0.75, 0.67, 0.58, 0.47, 0.33 })]
    [InlineData(
        90,
        new[] { 1.15, 1.12, 1.08, 1.04, 1, 0.96, 0.91, 0.87, 0.82, 0.76, 0.71, 0.65, 0.58, 0.50, 0.41, 0.29 }
    )]
    [Against("ambient factor", "NEC, table 310.15(B)(1)", CheckKind.Model)]
    public void NEC_table_310_15_B_1(double limitCelsius, double[] printed)
    {
        for (int i = 0; i < printed.Length; i++)
            if (i != 4)
                Publication.Meets(printed[i], Factor(limitCelsius, 10 + 5 * i), 0.006);
    }

    // Canadian Electrical Code, table 5A (from memory), 50 °C, reference 30 °C.
    [Theory]
    [InlineData(60, 0.58)]
    [InlineData(75, 0.75)]
    [InlineData(90, 0.82)]
    [InlineData(105, 0.86)]
    [InlineData(125, 0.89)]
    [Against("ambient factor", "Canadian Electrical Code, table 5A (from memory), 50 °C", CheckKind.Model)]
    public void Canadian_Electrical_Code_factors_at_50_C(double limitCelsius, double printedFactor) =>
        Publication.Meets(printedFactor, Factor(limitCelsius, 50), 0.0055);

    // IEC 60364-5-52 table B.52.17, bunched, all loaded (from memory).
    [Theory]
    [InlineData(1, 1.00)]
    [InlineData(2, 0.80)]
    [InlineData(3, 0.70)]
    [InlineData(4, 0.65)]
    [InlineData(5, 0.60)]
    [InlineData(6, 0.57)]
    [InlineData(7, 0.54)]
    [InlineData(8, 0.52)]
    [InlineData(9, 0.50)]
    [InlineData(12, 0.45)]
    [Against("bundle factor", "IEC 60364-5-52, table B.52.17 (from memory)", CheckKind.Copied)]
    public void IEC_60364_5_52_bundle_factors(int wires, double printedFactor)
    {
        Publication.Meets(printedFactor, BundleDerating.AllLoaded(wires)!.Value.DecimalFractions, 1e-9);
        Publication.Meets(19 * printedFactor, At(Wire("1 mm2"), 30, wires).Current!.Value.Amperes, 1e-9);
    }

    // MIL-W-5088L bundle chart, digitised (confirmed: transcription). Between printed counts the larger count, between
    // loadings linear.
    [Theory]
    [InlineData(2, 20, 0.9675)]
    [InlineData(8, 60, 0.595)]
    [InlineData(8, 100, 0.5125)]
    [InlineData(12, 100, 0.43)]
    [InlineData(18, 40, 0.505)]
    [InlineData(11, 100, 0.43)]
    [InlineData(8, 50, 0.63125)]
    [Against("bundle factor", "MIL-W-5088L, bundle chart digitised", CheckKind.Copied)]
    public void MIL_W_5088L_bundle_chart(int wires, double loadingPercent, double printedFactor) =>
        Publication.Meets(
            printedFactor,
            BundleDerating.PartlyLoaded(wires, Ratio.FromPercent(loadingPercent))!.Value.DecimalFractions,
            1e-9
        );

    // AC 43.13-1B paragraph 11-68 example 2 (confirmed): 47 A in free air × altitude 0.91 = 42.77 A; eight wires at 60
    // % take 0.6, 26 A. The chart's digitised point is 0.595, which gives 25.4 A: a misfit.
    [Fact]
    [Against(
        "bundle factor",
        "FAA AC 43.13-1B, paragraph 11-68 example 2 against the digitised chart",
        CheckKind.Model
    )]
    public void AC_43_13_1B_paragraph_11_68_example_2_bundle_of_eight() =>
        Publication.Misses(
            26,
            47 * 0.91 * BundleDerating.PartlyLoaded(8, Ratio.FromPercent(60))!.Value.DecimalFractions,
            0.5,
            0.022
        );

    // AC 43.13-1B paragraph 11-69 example B (from memory): twelve wires all loaded, 68 A × 0.43 = 29.2 A; at 20 000 ft
    // 61 A × 0.43 × 0.91 = 23.8 A.
    [Theory]
    [InlineData(68, 1, 29.2)]
    [InlineData(61, 0.91, 23.8)]
    [Against("bundle factor", "FAA AC 43.13-1B, paragraph 11-69 (from memory)", CheckKind.Model)]
    public void AC_43_13_1B_paragraph_11_69_example_B(
        double freeAirAmperes,
        double altitudeFactor,
        double printedAmperes
    ) =>
        Publication.Meets(
            printedAmperes,
            freeAirAmperes
                * altitudeFactor
                * BundleDerating.PartlyLoaded(12, Ratio.FromPercent(100))!.Value.DecimalFractions,
            0.1
        );

    private static CurrentRating At(WireSize wire, double celsius, int bundle) =>
        CurrentRating.Calculate(wire, Temperature.FromDegreesCelsius(celsius), bundle);

    private static double Factor(double limitCelsius, double celsius) =>
        AmbientDerating
            .Factor(
                Temperature.FromDegreesCelsius(limitCelsius),
                Temperature.FromDegreesCelsius(30),
                Temperature.FromDegreesCelsius(celsius)
            )
            .DecimalFractions;

    private static WireSize Wire(string name) =>
        WireTable.TryFind(name, out WireSize? wire) ? wire! : throw new ArgumentException(name);
}
