using UnitsNet;

namespace Lighting.Calc.Tests.LampModels;

public class LedClassTableTests
{
    [Theory]
    [InlineData("signal", 12, "LED signal")]
    [InlineData("signal", 6, "LED signal 6V")]
    [InlineData("stop-tail", 6, "LED stop-tail 6V")]
    public void A_socket_has_an_LED_for_its_volts(string socket, double volts, string code) =>
        Assert.Equal(code, LedClassTable.ForSocket(socket, ElectricPotential.FromVolts(volts))?.Code);

    [Theory]
    [InlineData("signal", 24)]
    [InlineData("sealed beam", 6)]
    [InlineData("candle", 12)]
    public void Where_none_is_made_there_is_none(string socket, double volts) =>
        Assert.Null(LedClassTable.ForSocket(socket, ElectricPotential.FromVolts(volts)));

    [Fact]
    public void A_class_is_found_by_its_code_with_its_figures()
    {
        Assert.True(LedClassTable.TryFind("led STOP-TAIL minor", out LampSpecification? tail));
        Assert.Equal(LampType.Led, tail!.Type);
        Assert.Equal(0.6, (double)tail.ReferencePower.Watts, 1e-9);
        Assert.Equal(13.5, tail.ReferenceVoltage.Volts);
        Assert.Equal(9, tail.MinimumVoltage!.Value.Volts);
        Assert.Equal(16, tail.MaximumVoltage!.Value.Volts);
        Assert.True(LedClassTable.TryFind("LED wedge 6V", out LampSpecification? wedge));
        Assert.Equal(LampType.LedResistor, wedge!.Type);
        Assert.False(LedClassTable.TryFind("LED of nothing", out _));
    }

    [Fact]
    public void Every_class_names_its_source_and_only_two_functions_have_a_minor()
    {
        Assert.All(LedClassTable.All, c => Assert.NotEmpty(c.Source));
        Assert.Equal(
            ["LED stop-tail", "LED headlamp", "LED stop-tail 6V", "LED headlamp 6V", "LED sealed beam"],
            LedClassTable.All.Where(c => c.Minor is not null).Select(c => c.Code)
        );
    }
}
