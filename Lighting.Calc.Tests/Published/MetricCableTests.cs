using UnitsNet;

namespace Lighting.Calc.Tests.Published;

/// <summary>Metric cable: the standard's maximum ohm/km as printed, and its place beside the other standards'
/// tables.</summary>
public class MetricCableTests
{
    // ISO 6722-1:2011 maxima at 20 °C in mOhm/m, bare copper, typed a second time from the reference (from memory);
    // 16 mm2 is IEC 60228 class 5 (confirmed), 0.85 mm2 JASO D611/JIS C 3406.
    [Theory]
    [InlineData("0.35 mm2", 54.4)]
    [InlineData("0.5 mm2", 37.1)]
    [InlineData("0.75 mm2", 24.7)]
    [InlineData("0.85 mm2", 20.8)]
    [InlineData("1 mm2", 18.5)]
    [InlineData("1.25 mm2", 14.9)]
    [InlineData("1.5 mm2", 12.7)]
    [InlineData("2 mm2", 9.42)]
    [InlineData("2.5 mm2", 7.60)]
    [InlineData("3 mm2", 6.15)]
    [InlineData("4 mm2", 4.71)]
    [InlineData("5 mm2", 3.94)]
    [InlineData("6 mm2", 3.14)]
    [InlineData("8 mm2", 2.38)]
    [InlineData("10 mm2", 1.82)]
    [InlineData("16 mm2", 1.21)]
    [Against("metric cable", "ISO 6722-1 (from memory), and JASO D611", CheckKind.Copied)]
    public void ISO_6722_maximum_resistance_of(string size, double printedOhmPerKilometre)
    {
        Assert.True(WireTable.TryFind(size, out WireSize? wire));
        Publication.Meets(
            printedOhmPerKilometre,
            wire!.Resistance(Length.FromKilometers(1), Temperature.FromDegreesCelsius(20)).Ohms,
            1e-9
        );
    }

    // IEC 60228 class 5, plain copper (confirmed): general flexible cable of the same nominal size. The vehicle
    // standard asks for somewhat less resistance: the two must agree within 8 %.
    [Theory]
    [InlineData("0.5 mm2", 39.0)]
    [InlineData("0.75 mm2", 26.0)]
    [InlineData("1 mm2", 19.5)]
    [InlineData("1.5 mm2", 13.3)]
    [InlineData("2.5 mm2", 7.98)]
    [InlineData("4 mm2", 4.95)]
    [InlineData("6 mm2", 3.30)]
    [InlineData("10 mm2", 1.91)]
    [Against("metric cable", "IEC 60228, class 5, plain", CheckKind.Model)]
    public void IEC_60228_class_5_is_at_most_8_percent_above_the_vehicle_cable_of(
        string size,
        double printedOhmPerKilometre
    )
    {
        Assert.True(WireTable.TryFind(size, out WireSize? wire));
        double ohms = wire!.Resistance(Length.FromKilometers(1), Temperature.FromDegreesCelsius(20)).Ohms;
        Assert.True(ohms < printedOhmPerKilometre);
        Publication.MeetsWithin(0.08, printedOhmPerKilometre, ohms);
    }

    // IEC 60228: 1.5 mm2 class 5 at 13.3 ohm/km, 4 m there and back, 5 A: 0.266 V.
    [Fact]
    [Against("voltage drop", "IEC 60228, a loop of 1.5 mm²", CheckKind.Arithmetic)]
    public void IEC_60228_value_over_a_four_metre_loop_at_5_A_drops_0_266_V()
    {
        TableRow row = Publication
            .Rows("conductors-other-standards")
            .Single(r => r.Text("standard") == "iec 60228 class 5 plain" && r.Text("nominal_size") == "1.5");
        var wire = new WireSize(
            "1.5 mm2 class 5",
            WireConstruction.MetricCable,
            Area.FromSquareMillimeters(1.5),
            row.Number("max_ohm_per_km") / 1000
        );
        Publication.Meets(
            0.266,
            (
                wire.Resistance(Length.FromMeters(4), Temperature.FromDegreesCelsius(20))
                * ElectricCurrent.FromAmperes(5)
            ).Volts,
            0.0005
        );
    }
}
