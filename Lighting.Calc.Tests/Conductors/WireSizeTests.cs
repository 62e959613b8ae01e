using UnitsNet;

namespace Lighting.Calc.Tests.Conductors;

public class WireSizeTests
{
    [Theory]
    [InlineData(3)]
    [InlineData(31)]
    public void A_gauge_that_is_not_listed_is_refused(int gauge)
    {
        ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(
            "gauge",
            () => AmericanWireGauge.Stranded(gauge)
        );
        Assert.StartsWith("Gauge must be between 4 and 30 AWG.", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(4)]
    [InlineData(30)]
    public void The_first_and_the_last_gauge_are_named_as_lists_name_them(int gauge)
    {
        Assert.Equal($"{gauge} AWG", AmericanWireGauge.Solid(gauge).ToString());
        Assert.Equal($"{gauge} AWG stranded", AmericanWireGauge.Stranded(gauge).ToString());
    }

    [Fact]
    public void The_table_lists_every_gauge_solid_and_stranded_and_then_the_cables_each_thickest_first()
    {
        IEnumerable<string> gauges = Enumerable.Range(4, 27).Select(n => $"{n} AWG");
        Assert.Equal([.. gauges, .. gauges.Select(n => $"{n} stranded")], WireTable.All.Take(54).Select(w => w.Name));
        Assert.Equal(
            [
                "16 mm2",
                "10 mm2",
                "8 mm2",
                "6 mm2",
                "5 mm2",
                "4 mm2",
                "3 mm2",
                "2.5 mm2",
                "2 mm2",
                "1.5 mm2",
                "1.25 mm2",
                "1 mm2",
                "0.85 mm2",
                "0.75 mm2",
                "0.5 mm2",
                "0.35 mm2",
            ],
            WireTable.All.Skip(54).Take(16).Select(w => w.Name)
        );
        Assert.Equal("30 AWG stranded", WireTable.Of(WireConstruction.StrandedGauge)[0].Name);
    }

    [Theory]
    [InlineData("1.25 mm²", "1.25 mm2")]
    [InlineData(" 1.25MM2 ", "1.25 mm2")]
    [InlineData("16awg Stranded", "16 AWG stranded")]
    public void A_size_is_found_by_a_persons_text(string text, string name)
    {
        Assert.True(WireTable.TryFind(text, out WireSize? wire));
        Assert.Equal(name, wire!.Name);
        Assert.False(WireTable.TryFind(text + "s", out _));
    }

    [Theory]
    [InlineData(70, -40, 1.6583)] // √(110/40)
    [InlineData(70, 30, 1)]
    [InlineData(70, 70, 0)]
    [InlineData(70, 100, 0)]
    public void The_ambient_factor_runs_from_its_coldest_air_to_nothing(double limit, double ambient, double factor) =>
        Assert.Equal(factor, Ambient(limit, ambient).DecimalFractions, 5e-5);

    [Fact]
    public void An_ambient_factor_outside_its_range_is_refused()
    {
        Assert.StartsWith(
            "Ambient temperature must be -40 °C or more.",
            Assert.Throws<ArgumentOutOfRangeException>("ambient", () => Ambient(70, -41)).Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Conductor limit must be above the reference ambient.",
            Assert.Throws<ArgumentOutOfRangeException>("conductorLimit", () => Ambient(30, 20)).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_rating_says_in_words_what_it_rests_on()
    {
        Assert.Equal(
            "16 AWG is rated 20 A in free air at 30 °C with 80 °C insulation, × 1.00 for an ambient of 30 °C × 1.00 "
                + "for a bundle of 1",
            Rating(16, 30, 1).Explanation
        );
        Assert.Equal(
            "18 AWG, the next smaller size with a published rating, is rated 15 A in free air at 30 °C with 80 °C "
                + "insulation, × 0.77 for an ambient of 50 °C × 0.80 for a bundle of 2",
            Rating(17, 50, 2).Explanation
        );
        Assert.Equal(
            "16 AWG is rated 20 A in free air at 30 °C with 80 °C insulation; at an ambient of 80 °C the rating is "
                + "zero",
            Rating(16, 80, 1).Explanation
        );
        Assert.EndsWith(
            "; no factor is published for 19 loaded wires in a bundle (maximum 18)",
            Rating(16, 30, 19).Explanation,
            StringComparison.Ordinal
        );
        Assert.Equal("no rating is published for 30 AWG or any smaller wire", Rating(30, 30, 1).Explanation);
    }

    private static CurrentRating Rating(int gauge, double celsius, int bundle) =>
        CurrentRating.Calculate(AmericanWireGauge.Solid(gauge), Temperature.FromDegreesCelsius(celsius), bundle);

    private static Ratio Ambient(double limit, double ambient) =>
        AmbientDerating.Factor(
            Temperature.FromDegreesCelsius(limit),
            Temperature.FromDegreesCelsius(30),
            Temperature.FromDegreesCelsius(ambient)
        );
}
