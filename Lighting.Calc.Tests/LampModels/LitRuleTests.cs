using UnitsNet;

namespace Lighting.Calc.Tests.LampModels;

/// <summary>When a load counts as on, by hand: a filament's light goes by the power 3.4 of its voltage, and 3 % of it
/// is left at 0.03^(1/3.4) = 35.7 % of the full voltage.</summary>
public class LitRuleTests
{
    private static readonly ElectricPotential s_full = ElectricPotential.FromVolts(12);

    [Theory]
    [InlineData(4.4, true)]
    [InlineData(4.1, false)]
    [InlineData(12, true)]
    [InlineData(0, false)]
    public void A_filament_is_lit_from_three_hundredths_of_its_light_on(double volts, bool isLit) =>
        Assert.Equal(isLit, LitRule.IsLit(Of(LampType.Filament), ElectricPotential.FromVolts(volts), s_full));

    [Theory]
    [InlineData(4.4, true)]
    [InlineData(-4.4, true)]
    [InlineData(4.1, false)]
    public void A_load_without_light_is_on_at_the_same_share_of_the_voltage(double volts, bool isLit) =>
        Assert.Equal(isLit, LitRule.IsLit(Of(LampType.Resistor), ElectricPotential.FromVolts(volts), s_full));

    private static LampSpecification Of(LampType type) =>
        LampSpecification.FromPower(type, ElectricPotential.FromVolts(12), Power.FromWatts(21));
}
