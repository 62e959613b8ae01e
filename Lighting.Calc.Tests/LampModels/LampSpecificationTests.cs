using UnitsNet;

namespace Lighting.Calc.Tests.LampModels;

/// <summary>Each law by hand, and what no lamp can be.</summary>
public class LampSpecificationTests
{
    // 3 W at 13.5 V with 9 V forward: 0.2222 A through a ballast of 4.5 V / 0.2222 A = 20.25 Ω; at 12 V 3 V / 20.25 Ω.
    [Fact]
    public void An_LED_behind_a_resistor_takes_what_is_left_above_its_forward_volts_over_the_resistor()
    {
        LampSpecification led = LampSpecification.FromPower(
            LampType.LedResistor,
            Volts(13.5),
            Power.FromWatts(3),
            Volts(9)
        );
        Assert.Equal(3 / 20.25, led.CurrentAt(Volts(12)).Amperes, 1e-5);
        Assert.Equal(3 / 20.25 / (3 / 13.5), led.RelativeLightAt(Volts(12))!.Value.DecimalFractions, 1e-5);
        Assert.Equal(0, led.CurrentAt(Volts(8)).Amperes, 1e-5);
        Assert.Equal(0, led.RelativeLightAt(Volts(-12))!.Value.DecimalFractions);
    }

    [Fact]
    public void An_LED_behind_a_driver_holds_its_watts_down_to_its_minimum_volts()
    {
        LampSpecification led = LampSpecification.FromPower(LampType.Led, Volts(13.5), Power.FromWatts(3), Volts(9));
        Assert.Equal(0.25, led.CurrentAt(Volts(12)).Amperes, 1e-12);
        Assert.Equal(1, led.RelativeLightAt(Volts(12))!.Value.DecimalFractions, 1e-12);
        Assert.Equal(3 / 9.0 / 2, led.CurrentAt(Volts(4.5)).Amperes, 1e-12);
        Assert.Equal(0.25, led.RelativeLightAt(Volts(4.5))!.Value.DecimalFractions, 1e-12);
        Assert.Equal(0, led.RelativeLightAt(Volts(-12))!.Value.DecimalFractions, 1e-5);
    }

    [Fact]
    public void A_lamp_of_no_known_law_cannot_be_made() =>
        Refused(
            "type",
            "Lamp type must be one of the enumeration.",
            () => LampSpecification.FromCurrent((LampType)99, Volts(12), ElectricCurrent.FromAmperes(1))
        );

    [Fact]
    public void A_resistor_follows_Ohms_law_both_ways_and_gives_no_light()
    {
        LampSpecification resistor = LampSpecification.FromCurrent(
            LampType.Resistor,
            Volts(12),
            ElectricCurrent.FromAmperes(3)
        );
        Assert.Equal(1.5, resistor.CurrentAt(Volts(6)).Amperes, 1e-12);
        Assert.Equal(-1.5, resistor.CurrentAt(Volts(-6)).Amperes, 1e-12);
        Assert.Equal(9, (double)resistor.PowerAt(Volts(6)).Watts, 1e-12);
        Assert.Equal(0.25, resistor.At(6).SlopeSiemens, 1e-12);
        Assert.Null(resistor.RelativeLightAt(Volts(12)));
        Assert.Null(resistor.RelativeLifeAt(Volts(12)));
        Assert.Null(resistor.MinimumVoltage);
    }

    [Fact]
    public void A_fixed_load_takes_its_amps_from_half_a_volt_on()
    {
        LampSpecification coil = LampSpecification.FromCurrent(
            LampType.Fixed,
            Volts(12),
            ElectricCurrent.FromAmperes(2)
        );
        Assert.Equal(2, coil.CurrentAt(Volts(9)).Amperes, 1e-5);
        Assert.Equal(1, coil.CurrentAt(Volts(0.25)).Amperes, 1e-5);
        Assert.Equal(0, coil.CurrentAt(Volts(-9)).Amperes, 1e-5);
    }

    [Fact]
    public void The_life_of_a_filament_is_told_from_a_tenth_of_its_volts_on()
    {
        LampSpecification lamp = LampSpecification.FromPower(LampType.Filament, Volts(12), Power.FromWatts(21));
        Assert.Equal(Math.Pow(0.9, -13), lamp.RelativeLifeAt(Volts(10.8))!.Value.DecimalFractions, 1e-9);
        Assert.NotNull(lamp.RelativeLifeAt(Volts(1.21)));
        Assert.Null(lamp.RelativeLifeAt(Volts(1.19)));
    }

    [Fact]
    public void Minimum_volts_that_are_not_given_are_half_for_a_driver_and_seven_tenths_for_a_ballast()
    {
        Assert.Equal(
            6,
            LampSpecification.FromPower(LampType.Led, Volts(12), Power.FromWatts(3)).MinimumVoltage!.Value.Volts,
            1e-12
        );
        Assert.Equal(
            8.4,
            LampSpecification
                .FromPower(LampType.LedResistor, Volts(12), Power.FromWatts(3))
                .MinimumVoltage!.Value.Volts,
            1e-12
        );
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-12)]
    public void Reference_volts_that_are_not_above_zero_are_refused(double volts)
    {
        Refused(
            "voltage",
            "Reference voltage must be greater than zero.",
            () => LampSpecification.FromPower(LampType.Filament, Volts(volts), Power.FromWatts(21))
        );
        Refused(
            "voltage",
            "Reference voltage must be greater than zero.",
            () => LampSpecification.FromCurrent(LampType.Filament, Volts(volts), ElectricCurrent.FromAmperes(1))
        );
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void A_reference_current_that_is_not_above_zero_is_refused(double amperes) =>
        Refused(
            "current",
            "Reference current must be greater than zero.",
            () => LampSpecification.FromCurrent(LampType.Filament, Volts(12), ElectricCurrent.FromAmperes(amperes))
        );

    [Theory]
    [InlineData(0)]
    [InlineData(12)]
    public void Minimum_volts_outside_zero_to_the_reference_volts_are_refused(double minimum) =>
        Refused(
            "minimumVoltage",
            "Minimum voltage must be between zero and the reference voltage.",
            () => LampSpecification.FromPower(LampType.Led, Volts(12), Power.FromWatts(3), Volts(minimum))
        );

    private static void Refused(string parameter, string message, Func<object?> action) =>
        Assert.StartsWith(
            message,
            Assert.Throws<ArgumentOutOfRangeException>(parameter, action).Message,
            StringComparison.Ordinal
        );

    private static ElectricPotential Volts(double volts) => ElectricPotential.FromVolts(volts);
}
