using UnitsNet;

namespace Lighting.Calc.Tests.LampModels;

public class LampTableTests
{
    [Fact]
    public void A_lamp_of_two_filaments_has_a_row_for_each_with_all_that_is_printed()
    {
        PublishedLamp stop = Lamp("P21/5W major", 6);
        Assert.Equal(("P21/5W major", "major", 6), (stop.Code, stop.Filament, stop.SystemVoltage.Volts));
        Assert.Equal(("P21/5W major", LampType.Filament), (stop.Specification.Code, stop.Specification.Type));
        Assert.Equal(6.75, stop.Specification.ReferenceVoltage.Volts);
        Assert.Equal(26, (double)stop.Specification.ReferencePower.Watts, 1e-9);
        Assert.Equal(440, stop.Specification.ReferenceFlux!.Value.Lumens, 1e-9);
        Assert.Equal((21.0, 27.6), ((double)stop.RatedPower!.Value.Watts, (double)stop.MaximumPower!.Value.Watts));
        Assert.Equal(6, stop.Tolerance!.Value.Percent, 1e-9);
        Assert.Equal(("stop|indicator", "BAY15d", "stop-tail"), (stop.Use, stop.Cap, stop.SocketClass));
        Assert.StartsWith("UN Regulation No. 37, sheet P21/5W", stop.Source, StringComparison.Ordinal);
        Assert.Equal(6, (double)Lamp("P21/5W minor", 6).Specification.ReferencePower.Watts, 1e-9);
    }

    // Candelas all round: 4π × 32 = 402.1 lm.
    [Fact]
    public void A_trade_number_is_known_by_its_amps_and_has_no_watts_on_its_cap()
    {
        PublishedLamp lamp = Lamp("1156", 12);
        Assert.Equal(("1156", "", "1156"), (lamp.Code, lamp.Filament, lamp.Specification.Code));
        Assert.Equal(2.10, lamp.Specification.ReferenceCurrent.Amperes);
        Assert.Equal(402.12, lamp.Specification.ReferenceFlux!.Value.Lumens, 0.01);
        Assert.Null(lamp.RatedPower);
        Assert.Null(lamp.MaximumPower);
    }

    [Fact]
    public void What_is_not_printed_is_not_there()
    {
        PublishedLamp lamp = Lamp("6006 high", 6);
        Assert.Null(lamp.Specification.ReferenceFlux);
        Assert.Null(lamp.Tolerance);
        Assert.Null(lamp.MaximumPower);
        Assert.Equal(50, (double)lamp.RatedPower!.Value.Watts);
        Assert.Equal(LampType.Halogen, Lamp("H4 low", 12).Specification.Type);
    }

    [Theory]
    [InlineData("p21 / 5w MAJOR")]
    [InlineData("  P21/5W   major ")]
    [InlineData("P21/ 5W major")]
    public void A_code_is_found_whatever_its_case_and_spaces(string text) =>
        Assert.Equal("P21/5W major", Lamp(text, 12).Code);

    [Theory]
    [InlineData("P21/5W")]
    [InlineData("P21/5Wmajor")]
    [InlineData("")]
    public void A_code_that_the_table_lacks_is_not_found(string text)
    {
        Assert.False(LampTable.TryFind(text, ElectricPotential.FromVolts(12), out PublishedLamp? lamp));
        Assert.Null(lamp);
    }

    [Theory]
    [InlineData("P21W", 6, 6)]
    [InlineData("P21W", 12, 12)]
    [InlineData("PY21W", 6, 12)]
    public void The_row_of_the_bikes_volts_is_preferred_and_another_taken_where_there_is_none(
        string code,
        double system,
        double found
    ) => Assert.Equal(found, Lamp(code, system).SystemVoltage.Volts);

    private static PublishedLamp Lamp(string code, double systemVolts)
    {
        Assert.True(LampTable.TryFind(code, ElectricPotential.FromVolts(systemVolts), out PublishedLamp? lamp));
        return lamp!;
    }
}
