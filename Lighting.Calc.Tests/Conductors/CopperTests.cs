using UnitsNet;

namespace Lighting.Calc.Tests.Conductors;

public class CopperTests
{
    private static readonly Temperature s_cool = Temperature.FromDegreesCelsius(20);

    [Fact]
    public void A_kilometre_of_one_square_millimetre_is_the_inverse_of_58_per_metre() =>
        Assert.Equal(
            1000.0 / 58,
            Copper.Resistance(Length.FromKilometers(1), Area.FromSquareMillimeters(1), s_cool).Ohms,
            1e-12
        );

    [Fact]
    public void Warm_copper_resists_more() =>
        Assert.Equal(
            1000.0 / 58 * 1.2358,
            Copper
                .Resistance(Length.FromKilometers(1), Area.FromSquareMillimeters(1), Temperature.FromDegreesCelsius(80))
                .Ohms,
            1e-9
        );

    [Fact]
    public void No_length_has_no_resistance()
    {
        Assert.Equal(0, Copper.Resistance(Length.Zero, Area.FromSquareMillimeters(1), s_cool).Ohms);
        Assert.Equal(0, AmericanWireGauge.Solid(16).Resistance(Length.Zero, s_cool).Ohms);
    }

    [Theory]
    [InlineData(-61)]
    [InlineData(251)]
    public void A_temperature_outside_the_linear_span_is_refused(double celsius) =>
        Refused(
            "temperature",
            $"Conductor temperature must be between -60 °C and 250 °C.",
            () => Copper.ResistanceFactor(Temperature.FromDegreesCelsius(celsius))
        );

    [Fact]
    public void A_length_below_zero_is_refused()
    {
        Refused(
            "length",
            "Length must be zero or more.",
            () => Copper.Resistance(Length.FromMeters(-1), Area.FromSquareMillimeters(1), s_cool)
        );
        Refused(
            "length",
            "Length must be zero or more.",
            () => AmericanWireGauge.Solid(16).Resistance(Length.FromMeters(-1), s_cool)
        );
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void An_area_of_nothing_is_refused(double squareMillimetres) =>
        Refused(
            "area",
            "Area must be greater than zero.",
            () => Copper.Resistance(Length.FromMeters(1), Area.FromSquareMillimeters(squareMillimetres), s_cool)
        );

    [Theory]
    [InlineData(-60, 0.6856)] // 1 + 0.00393 × (−80)
    [InlineData(250, 1.9039)] // 1 + 0.00393 × 230
    public void The_ends_of_the_linear_span_belong_to_it(double celsius, double factor) =>
        Assert.Equal(factor, Copper.ResistanceFactor(Temperature.FromDegreesCelsius(celsius)).DecimalFractions, 1e-12);

    [Fact]
    public void The_resistivity_is_that_of_the_standard() =>
        Assert.Equal(1.7241e-8, Copper.ResistivityAt20Celsius.OhmMeters, 5e-13);

    private static void Refused(string parameter, string message, Action action) =>
        Assert.StartsWith(
            message,
            Assert.Throws<ArgumentOutOfRangeException>(parameter, action).Message,
            StringComparison.Ordinal
        );
}
