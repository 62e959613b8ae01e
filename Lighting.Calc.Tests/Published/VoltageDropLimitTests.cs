using UnitsNet;

namespace Lighting.Calc.Tests.Published;

/// <summary>The trade's limits of voltage drop, and a wire worked out for one of them.</summary>
public class VoltageDropLimitTests
{
    /// <summary>Trade journal 07/2017, page 7: volts in the plus wire of 12 V vehicles, from the switch.</summary>
    [Theory]
    [InlineData("lamp under 15 W", 0.1)]
    [InlineData("lamp over 15 W", 0.5)]
    [InlineData("headlamp", 0.3)]
    [InlineData("horn or relay", 0.5)]
    [InlineData("charging", 0.4)]
    [Against("voltage-drop limit", "trade journal 07/2017, page 7, plus wire", CheckKind.Copied)]
    public void Limits_of_the_plus_wire(string kind, double volts) =>
        Publication.Meets(
            volts,
            Publication.Rows("drop-limits").Single(r => r.Text("kind") == kind).Number("plus_wire_v"),
            1e-9
        );

    /// <summary>The same page works out a wire for 8.3 A over 1.8 m and 0.5 V: 0.54 mm², with copper of 0.018 Ω·mm²/m,
    /// which is 4.4 % over that of the standard; and takes 1 mm².</summary>
    [Fact]
    [Against("voltage drop", "trade journal 07/2017, page 7, worked example", CheckKind.Model)]
    public void The_area_for_half_a_volt()
    {
        var area = Area.FromSquareMillimeters(1);
        double drop =
            8.3 * Copper.Resistance(Length.FromMeters(1.8), area, Temperature.FromDegreesCelsius(20)).Ohms;
        Publication.Misses(0.54, drop / 0.5, 0.005, 0.05);
    }
}
