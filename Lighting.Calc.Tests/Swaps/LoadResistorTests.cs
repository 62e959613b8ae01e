using FsCheck.Xunit;
using UnitsNet;

namespace Lighting.Calc.Tests.Swaps;

public class LoadResistorTests
{
    [Property]
    public void LED_and_resistor_together_draw_what_the_lamp_drew(byte lamp, byte led, byte tenths)
    {
        double volts = 6 + tenths / 25.0,
            less = 0.1 + led / 50.0,
            more = less + 0.1 + lamp / 10.0;
        LoadResistor resistor = Between(volts, more, less);
        Assert.Equal(more / volts, less / volts + volts / resistor.Resistance.Ohms, 1e-9);
        Assert.Equal(more - less, (double)resistor.Heat.Watts, 1e-9);
    }

    [Property]
    public void The_standard_value_is_at_most_a_step_below(byte lamp, byte led)
    {
        double less = 0.1 + led / 50.0;
        LoadResistor resistor = Between(13.5, less + 0.1 + lamp / 10.0, less);
        Assert.InRange(resistor.PreferredResistance.Ohms / resistor.Resistance.Ohms, 0.86, 1 + 1e-9);
    }

    [Theory]
    [InlineData(1, 1, 1)]
    [InlineData(10, 10, 10)]
    [InlineData(9.99, 9.1, 9.1)]
    [InlineData(0.47, 0.47, 0.47)]
    [InlineData(26.04, 24, 24)]
    public void Standard_values_of_series_E24(double ohms, double low, double high) =>
        Assert.InRange(Between(10, 100 / ohms, 0).PreferredResistance.Ohms, low - 1e-9, high + 1e-9);

    [Theory]
    [InlineData(0, 21, 3)]
    [InlineData(13.5, 3, 3)]
    [InlineData(13.5, 3, 21)]
    [InlineData(13.5, 21, -1)]
    public void Values_outside_the_range_are_refused(double volts, double lamp, double led) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Between(volts, lamp, led));

    [Fact]
    public void A_resistor_hotter_than_any_usual_rating_has_none() =>
        Assert.Null(Between(13.5, 300, 0).RatingFor(ElectricPotential.FromVolts(14.8)));

    private static LoadResistor Between(double volts, double lamp, double led) =>
        LoadResistor.Between(ElectricPotential.FromVolts(volts), Power.FromWatts(lamp), Power.FromWatts(led));
}
