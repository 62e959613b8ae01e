using UnitsNet;

namespace Lighting.Calc.Tests.Fuses;

/// <summary>Lamps that flash for minutes, as on a hazard switch, load a fuse with their rms current.</summary>
public class FlashingLoadTests
{
    // 2 A each: a steady lamp and four flashing ones, lit 75 % of the time (tables/constants.csv):
    // √(0.75 · 10² + 0.25 · 2²) = √76 = 8.7178 A; the peak is 10 A.
    [Theory]
    [InlineData("indicators", 8.71779788708135)]
    [InlineData("rear", 10)]
    public void Flashing_lamps_count_with_their_rms_current(string circuit, double amperes)
    {
        Bike bike = Bike(circuit, momentary: false);
        BikeReport report = BikeCheck.Evaluate(bike, cancellationToken: TestContext.Current.CancellationToken);
        ContinuousLoad load = Assert.Single(report.Fuses).Steady;
        Assert.Equal(amperes, load.ContinuousCurrent.Amperes, 1e-9);
        Assert.Equal(10, load.WorstCurrent.Amperes, 1e-9);
        Assert.Equal("hazard=on", load.ContinuousSetting.ToString());
    }

    [Fact]
    public void Momentary_indicators_are_no_continuous_load()
    {
        ContinuousLoad load = Assert.Single(
            BikeCheck
                .Evaluate(Bike("indicators", momentary: true), cancellationToken: TestContext.Current.CancellationToken)
                .Fuses
        ).Steady;
        Assert.Equal(2, load.ContinuousCurrent.Amperes, 1e-9);
        Assert.Equal(10, load.WorstCurrent.Amperes, 1e-9);
    }

    private static Bike Bike(string circuit, bool momentary)
    {
        var two = LampSpecification.FromCurrent(
            LampType.Fixed,
            ElectricPotential.FromVolts(12),
            ElectricCurrent.FromAmperes(2)
        );
        return Lighting.Calc.Bike.ForSystem(ElectricPotential.FromVolts(12)) with
        {
            BatteryResistance = ElectricResistance.Zero,
            Lamps =
            [
                new FittedLamp
                {
                    Circuit = "lights",
                    Lamp = "lamp",
                    Specification = two,
                    Feed = "live",
                    Return = "frame",
                },
                new FittedLamp
                {
                    Circuit = circuit,
                    Lamp = "corner",
                    Quantity = 4,
                    Specification = two,
                    Feed = "flashing",
                    Return = "frame",
                },
            ],
            Fuses =
            [
                new Fuse
                {
                    Name = "main",
                    From = Lighting.Calc.Bike.BatteryPlus,
                    To = "live",
                    Rating = ElectricCurrent.FromAmperes(15),
                },
            ],
            Switches =
            [
                new SwitchContact
                {
                    Switch = "hazard",
                    From = "live",
                    To = "flashing",
                    ClosedIn = ["on"],
                    Momentary = momentary,
                },
            ],
            Runs =
            [
                new Run
                {
                    Name = "earth",
                    From = "frame",
                    To = Lighting.Calc.Bike.BatteryMinus,
                    Wire = AmericanWireGauge.Stranded(12),
                    Length = Length.FromMeters(0.1),
                },
            ],
        };
    }
}
