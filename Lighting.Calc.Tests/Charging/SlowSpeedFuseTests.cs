using UnitsNet;
using static Lighting.Calc.Tests.Charging.ValleyPost;

namespace Lighting.Calc.Tests.Charging;

/// <summary>The largest current of a fuse over engine speed: of LED drivers at the slowest, of filaments at the
/// fastest.</summary>
public class SlowSpeedFuseTests
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    // At 1000 rpm the battery, 12.6 V behind 0.2 Ω, makes up what 60 W draw: V = 12.6 − 0.2·(60/V − I). The list is a
    // straight line, and the generator gives at V what it gives at 14 V and 15.7/(V + 1.7) times the speed.
    [Fact]
    public void A_driver_draws_most_at_the_slowest_listed_speed()
    {
        FuseSuitability fuse = Fuse(Bike("led"));
        double volts = 12;
        for (int round = 0; round < 100; round++)
        {
            double given = 0.5 + 19.5 * (15.7 / (volts + 1.7) - 1) / 3;
            volts = 12.6 - 0.2 * (60 / volts - given);
        }

        Assert.Equal(60 / volts, fuse.Steady.WorstCurrent.Amperes, 1e-6);
        Assert.Equal(60 / volts, fuse.Steady.ContinuousCurrent.Amperes, 1e-6);
        Assert.Equal(1000, fuse.Steady.WorstSpeed!.Value.RevolutionsPerMinute, 1e-9);
        Assert.True(60 / volts > 60 / 14.0);
        Assert.Contains("(1000 rpm)", fuse.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void A_filament_draws_most_at_the_fastest()
    {
        FuseSuitability fuse = Fuse(Bike("filament"));
        Assert.Equal(5 * Math.Pow(14 / 12.0, 0.55), fuse.Steady.WorstCurrent.Amperes, 1e-6);
        Assert.Equal(4000, fuse.Steady.WorstSpeed!.Value.RevolutionsPerMinute, 1e-9);
        Assert.DoesNotContain("rpm", fuse.Headline, StringComparison.Ordinal);
    }

    // A rating between the two currents: the fuse suits at the fastest speed alone.
    [Fact]
    public void A_fuse_that_suits_at_speed_alone_does_not_suit()
    {
        Bike bike = Bike("led");
        bike = bike with { Fuses = [bike.Fuses[0] with { Rating = ElectricCurrent.FromAmperes(6) }] };
        FuseSuitability fuse = Fuse(bike);
        Assert.True(60 / 14.0 < fuse.Steady.UsableCurrent.Amperes);
        Assert.Equal(FuseVerdict.Overloaded, fuse.Verdict);
    }

    // Whatever the mixture, no listed speed makes more flow.
    [Theory]
    [InlineData(0)]
    [InlineData(20)]
    [InlineData(40)]
    [InlineData(60)]
    public void No_listed_speed_makes_more_flow(double ledWatts)
    {
        Bike bike = Bike("led");
        FittedLamp lamp = bike.Lamps[0];
        bike = bike with
        {
            Lamps =
            [
                .. ledWatts > 0
                    ? new[]
                    {
                        lamp with
                        {
                            Specification = LampSpecification.FromPower(
                                LampType.Led,
                                ElectricPotential.FromVolts(12),
                                Power.FromWatts(ledWatts)
                            ),
                        },
                    }
                    : [],
                lamp with
                {
                    Lamp = "tail lamp",
                    Specification = LampSpecification.FromPower(
                        LampType.Filament,
                        ElectricPotential.FromVolts(12),
                        Power.FromWatts(61 - ledWatts)
                    ),
                },
            ],
        };
        double worst = Fuse(bike).Steady.WorstCurrent.Amperes;
        RunningEngine engine = RunningEngine.Of(bike);
        for (double rpm = 1000; rpm <= 4000; rpm += 50)
            Assert.True(engine.At(Rpm(rpm), Setting.Empty)!.Fuses[0].Current.Amperes <= worst + 1e-9, $"{rpm} rpm");
    }

    [Fact]
    public void The_listed_bike_of_the_tolerances_is_the_checked_one()
    {
        Bike bike = Bike("led");
        ToleranceReport report = ToleranceCheck.Evaluate(
            bike,
            new ToleranceOptions { Samples = 100, Seed = 1 },
            cancellationToken: Cancellation
        );
        Assert.Equal(
            Fuse(bike).Steady.WorstCurrent.Amperes,
            report.Fuses[0].Current.Listed!.Value.Amperes,
            1e-9
        );
    }

    private static FuseSuitability Fuse(Bike bike) =>
        BikeCheck.Evaluate(bike, cancellationToken: Cancellation).Fuses[0];

    private static Bike Bike(string type) =>
        BikeLists
            .Read(
                ListSource
                    .Empty.With(
                        "bike.csv",
                        "item,value\nbattery voltage,12.6\ncharging voltage,14\nbattery resistance,0.2 ohm\n"
                    )
                    .With("lamps.csv", $"circuit,lamp,type,volts,watts\nhead,headlamp,{type},12,60\n")
                    .With("fuses.csv", "fuse,from,to,rating,resistance\nmain,,,10 A,0\n")
                    .With("charging.csv", "rpm,current\n1000,0.5\n4000,20\n")
            )
            .Value.Bike;
}
