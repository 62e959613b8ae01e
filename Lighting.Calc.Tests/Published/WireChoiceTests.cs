using UnitsNet;

namespace Lighting.Calc.Tests.Published;

/// <summary>Worked choices of a wire by drop and rating together.</summary>
public sealed class WireChoiceTests
{
    // ZRD, "Proper Wire Sizing" (zrd.com/faq/esdfaqwiresize.html), examples 1 and 2: feet × amps against a drop table,
    // then the rating. Lengths are the whole circuit. The table is for 105 °C insulation; the ratings here are the 80
    // °C ones of 33 CFR 183.425, which are lower, and lead to the same sizes.
    [Theory]
    [InlineData(12, 10, 40, 45, "8 AWG", SizingConstraint.Drop)] // printed: "a wire size of 8 is required"
    [InlineData(24, 3, 10, 100, "6 AWG", SizingConstraint.Heat)] // printed: "a wire size of 6 is required"
    [Against("wire choice", "ZRD, \"Proper Wire Sizing\"")]
    public void ZRD_proper_wire_sizing_examples(
        double volts,
        double percent,
        double circuitFeet,
        double amperes,
        string printed,
        SizingConstraint limit
    )
    {
        SingleRunResult result = Size(volts, percent, circuitFeet, amperes);
        Publication.Chooses(printed, result.Chosen?.Name);
        Assert.Equal(limit, result.Limit);
    }

    // Jamestown Distributors, "Maintaining Three Percent Voltage Drop", example: a bilge pump of 10 A, 11 ft there and
    // 10 ft back, 12 V, by CM = K·I·L/E with K = 10.75: 12 AWG for a gauge of 6,500 circular mils.
    [Fact]
    [Against("wire choice", "Jamestown Distributors, bilge pump")]
    public void Jamestown_three_percent_bilge_pump_example() =>
        Publication.Chooses("12 AWG", Size(12, 3, 21, 10).Chosen?.Name);

    // Holland Marine Products catalogue 2021, page 53, table B, the same pump at 10 %: 16 AWG.
    [Fact]
    [Against("wire choice", "Holland Marine Products catalogue 2021")]
    public void Holland_Marine_ten_percent_bilge_pump_example() =>
        Publication.Chooses("16 AWG", Size(12, 10, 21, 10).Chosen?.Name);

    // The same catalogue, page 52, table A, prints 10 AWG at 3 %, where the formula above gives 12: its row is that of
    // 25 ft.
    [Fact]
    [Against("wire choice", "Holland Marine Products catalogue 2021")]
    public void Holland_Marine_three_percent_table_rounds_the_length_up_to_its_row() =>
        Publication.Chooses("10 AWG", Size(12, 3, 25, 10).Chosen?.Name);

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
