using UnitsNet;

namespace Lighting.Calc.Tests.Published;

/// <summary>Worked choices of a wire by drop and rating together.</summary>
public sealed class WireChoiceTests
{
    // "Proper Wire Sizing" (ZRD), examples 1 and 2: feet × amps against a drop table,
    // then the rating. Lengths are the whole circuit. The table is for 105 °C insulation; the ratings here are the 80
    // °C ones of 33 CFR 183.425, which are lower, and lead to the same sizes.
    [Theory]
    [InlineData(12, 10, 40, 45, "8 AWG", nameof(SizingConstraint.Drop))] // printed: "a wire size of 8 is required"
    [InlineData(24, 3, 10, 100, "6 AWG", nameof(SizingConstraint.Heat))] // printed: "a wire size of 6 is required"
    [Against("wire choice", "\"Proper Wire Sizing\", examples 1 and 2", CheckKind.Model)]
    public void Proper_wire_sizing_examples(
        double volts,
        double percent,
        double circuitFeet,
        double amperes,
        string printed,
        string limit
    )
    {
        SingleRunResult result = Size(volts, percent, circuitFeet, amperes);
        Publication.Chooses(printed, result.Chosen?.Name);
        Assert.Equal(limit, result.Limit.ToString());
    }

    // "Maintaining Three Percent Voltage Drop" (Jamestown Distributors), example: a bilge pump of 10 A, 11 ft there and
    // 10 ft back, 12 V, by CM = K·I·L/E with K = 10.75: 12 AWG for a gauge of 6,500 circular mils.
    [Fact]
    [Against("wire choice", "\"Maintaining Three Percent Voltage Drop\", bilge pump", CheckKind.Model)]
    public void Three_percent_bilge_pump_example() =>
        Publication.Chooses("12 AWG", Size(12, 3, 21, 10).Chosen?.Name);

    // Holland Marine Products catalogue 2021, page 53, table B, the same pump at 10 %: 16 AWG.
    [Fact]
    [Against("wire choice", "marine catalogue 2021, page 53, table B, bilge pump", CheckKind.Model)]
    public void Marine_catalogue_ten_percent_bilge_pump_example() =>
        Publication.Chooses("16 AWG", Size(12, 10, 21, 10).Chosen?.Name);

    // The same catalogue, page 52, table A, prints 10 AWG for the 21 ft at 3 %, where the formula above gives 12: its
    // row is that of 25 ft.
    [Fact]
    [Against("wire choice", "marine catalogue 2021, page 52, table A, bilge pump", CheckKind.Model)]
    public void Marine_catalogue_three_percent_table_rounds_the_length_up_to_its_row() =>
        Publication.ChoosesOther("10 AWG", "12 AWG", Size(12, 3, 21, 10).Chosen?.Name);

    // Marine catalogue, electric wire: a lamp of 25 W on 12 V (2.1 A), 18 m, 5 %: 2.25 mm², so 2.5 mm².
    [Fact]
    [Against("wire choice", "catalogue page on electric wire, lamp of 25 W at 18 m", CheckKind.Model)]
    public void Catalogue_page_a_lamp_of_25_W_at_18_metres() =>
        Publication.Chooses("2.5 mm2", Metric(12, 5, 18, 2.1, oneWay: false).Chosen?.Name);

    // Trade journal 07/2017, page 7: 8.3 A × 0.018 × 1.8 m / 0.5 V = 0.54 mm², so 1 mm². By the larger resistance of
    // vehicle cable 0.75 mm² drops 0.37 V: the model chooses that.
    [Fact]
    [Against("wire choice", "trade journal 07/2017, page 7, 8.3 A over 1.8 m", CheckKind.Model)]
    public void Trade_journal_07_2017_page_7() =>
        Publication.ChoosesOther("1 mm2", "0.75 mm2", Metric(10, 5, 1.8, 8.3, oneWay: true).Chosen?.Name);

    private static SingleRunResult Metric(double volts, double percent, double metres, double amperes, bool oneWay) =>
        SingleRunSizing.Size(
            new SingleRunOptions
            {
                Voltage = ElectricPotential.FromVolts(volts),
                AllowedDrop = Ratio.FromPercent(percent),
                Length = Length.FromMeters(metres),
                OneWay = oneWay,
                Current = ElectricCurrent.FromAmperes(amperes),
                Family = WireConstruction.MetricCable,
            }
        );

    private static SingleRunResult Size(double volts, double percent, double circuitFeet, double amperes) =>
        SingleRunSizing.Size(
            new SingleRunOptions
            {
                Voltage = ElectricPotential.FromVolts(volts),
                AllowedDrop = Ratio.FromPercent(percent),
                Length = Length.FromFeet(circuitFeet),
                OneWay = true,
                Current = ElectricCurrent.FromAmperes(amperes),
                Family = WireConstruction.SolidGauge,
            }
        );
}
