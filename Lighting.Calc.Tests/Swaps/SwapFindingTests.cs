using UnitsNet;

namespace Lighting.Calc.Tests.Swaps;

public class SwapFindingTests
{
    private const string StopTail = "circuit,lamp,code\nrear lamp,stop,P21/5W major\nrear lamp,tail,P21/5W minor\n";

    [Fact]
    public void One_filament_of_two_cannot_be_replaced_alone()
    {
        SwapReport report = SwapBikes.Compare(
            SwapBikes.LampsOnly(StopTail),
            SwapBikes.Replace(("tail", SwapBikes.Led(0.6)))
        );
        Finding finding = Assert.Single(report.About("tail"));
        Assert.Equal(Severity.Fault, finding.Severity);
        Assert.Contains(
            "This lamp and 'stop' are the two filaments of one P21/5W",
            finding.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Both_filaments_together_can()
    {
        SwapReport report = SwapBikes.Compare(
            SwapBikes.LampsOnly(StopTail),
            SwapBikes.Replace(("tail", SwapBikes.Led(0.6)), ("stop", SwapBikes.Led(3)))
        );
        Assert.Empty(report.About("tail"));
        Assert.Empty(report.About("stop"));
    }

    [Theory]
    [InlineData("LED signal", "", true)]
    [InlineData("LED signal", "charging voltage,16.5\n", false)]
    [InlineData("LED signal 6V", "", false)]
    public void LED_volts_are_held_against_the_regulators_highest(string code, string bike, bool suits)
    {
        SwapReport report = SwapBikes.Compare(
            SwapBikes.LampsOnly("circuit,lamp,code\nrear lamp,stop,P21W\n", bike),
            SwapBikes.Replace(("stop", SwapBikes.Class(code)))
        );
        Assert.Equal(suits, report.About("stop").All(f => f.Severity != Severity.Fault));
        if (code == "LED signal 6V")
            Assert.Contains(
                "14.80 V from the regulator, more than its 8.00 V maximum",
                report.About("stop")[0].Message,
                StringComparison.Ordinal
            );
    }

    [Fact]
    public void An_LED_without_a_known_limit_is_told_of_by_name() =>
        Assert.Equal(
            ["stop"],
            Assert
                .Single(
                    SwapBikes
                        .Compare(
                            SwapBikes.LampsOnly("circuit,lamp,code\nrear lamp,stop,P21W\n"),
                            SwapBikes.Replace(("stop", SwapBikes.Led(3)))
                        )
                        .About("LED voltage")
                )
                .Parts
        );

    [Theory]
    [InlineData(RegulatorKind.None, Severity.Fault)]
    [InlineData(RegulatorKind.NotStated, Severity.Caution)]
    public void The_surplus_of_an_unregulated_system_grows_as_the_load_falls(RegulatorKind regulator, Severity severity)
    {
        var lists = SwapBikes.Demo("valley-twin");
        var options = new CheckOptions { Charging = ChargingOptions.Default with { Regulator = regulator } };
        SwapReport report = SwapBikes.Compare(lists.Bike, lists.Swaps, options);
        Finding finding = Assert.Single(report.About("battery"), f => f.Severity != Severity.Note);
        Assert.Equal(severity, finding.Severity);
        // The load saved, less the little that the higher volts give the coils: the surplus grows by it exactly.
        Change<ChargingBalance> change = report.Charging.Single(c => c.Before.Setting.Equals(report.Excess!.Setting));
        Assert.Equal(
            change.Before.Demand.Amperes - change.After.Demand.Amperes,
            report.Excess!.After.Net!.Value.Amperes - report.Excess.Before.Net!.Value.Amperes,
            1e-9
        );
    }

    [Fact]
    public void Parking_and_full_lights_stand_longer_after_the_swap()
    {
        var lists = SwapBikes.Demo("valley-twin");
        SwapReport report = SwapBikes.Compare(lists.Bike, lists.Swaps);
        Assert.Equal(
            ["park", "park", "main", "main"],
            report.Standing.Select(s => s.Before.Setting.PositionOf("lights")!)
        );
        Assert.All(report.Standing, s => Assert.True(s.After.Load.Amperes < s.Before.Load.Amperes - 0.5));
        Assert.All(report.Standing, s => Assert.True(s.After.Time!.Value.Hours > s.Before.Time!.Value.Hours));
    }

    [Fact]
    public void A_series_regulator_keeps_the_surplus_out()
    {
        var lists = SwapBikes.Demo("valley-twin");
        var options = new CheckOptions { Charging = ChargingOptions.Default with { Regulator = RegulatorKind.Series } };
        Assert.DoesNotContain(
            SwapBikes.Compare(lists.Bike, lists.Swaps, options).About("battery"),
            f => f.Kind is FindingKind.SurplusAfterSwap or FindingKind.OverchargeAfterSwap
        );
    }

    [Fact]
    public void A_shunt_regulator_without_a_limit_takes_the_surplus_as_heat()
    {
        var lists = SwapBikes.Demo("valley-twin");
        var options = new CheckOptions { Charging = ChargingOptions.Default with { Regulator = RegulatorKind.Shunt } };
        ExcessCurrentChange surplus = SwapBikes.Compare(lists.Bike, lists.Swaps, options).Excess!;
        Assert.Equal(13.8 * surplus.After.Net!.Value.Amperes, (double)surplus.After.ShuntHeat!.Value.Watts, 1e-9);
        Assert.True((double)surplus.After.ShuntHeat!.Value.Watts > (double)surplus.Before.ShuntHeat!.Value.Watts);
    }

    [Fact]
    public void On_positive_earth_the_polarity_of_every_LED_is_told()
    {
        Bike bike = SwapBikes.Demo("chapel-single").Bike;
        Assert.Contains(
            "positive earth: pilot lamp",
            Assert
                .Single(
                    SwapBikes
                        .Compare(bike, SwapBikes.Replace(("pilot lamp", SwapBikes.Class("LED small bayonet 6V"))))
                        .About("polarity")
                )
                .Message,
            StringComparison.Ordinal
        );
        Assert.Empty(
            SwapBikes
                .Compare(
                    SwapBikes.Demo("valley-twin").Bike,
                    SwapBikes.Replace(("tail lamp", SwapBikes.Led(1)), ("stop lamp", SwapBikes.Led(3)))
                )
                .About("polarity")
        );
    }

    [Fact]
    public void Road_approval_concerns_the_lamps_seen_from_outside()
    {
        Bike bike = SwapBikes.Demo("valley-twin").Bike;
        SwapReport report = SwapBikes.Compare(bike, Swap.ToLed(bike).Replacements);
        Finding finding = Assert.Single(report.About("road approval"));
        Assert.Equal(Severity.Caution, finding.Severity);
        foreach (
            string lamp in new[]
            {
                "headlamp low",
                "headlamp high",
                "tail lamp",
                "stop lamp",
                "left indicators",
                "right indicators",
            }
        )
            Assert.Contains(lamp, finding.Message, StringComparison.Ordinal);
        foreach (
            string lamp in new[] { "speedometer lamp", "rev counter lamp", "high-beam indicator", "ignition coils" }
        )
            Assert.DoesNotContain(lamp, finding.Message, StringComparison.Ordinal);
    }

    // Published flux: a P21W gives 460 lm and an R10W 125 lm, both at 13.5 V.
    [Fact]
    public void Less_light_is_told_in_lumens_where_they_are_known()
    {
        Assert.True(LampTable.TryFind("R10W", ElectricPotential.FromVolts(12), out PublishedLamp? small));
        SwapReport report = SwapBikes.Compare(
            SwapBikes.LampsOnly("circuit,lamp,code\nrear lamp,stop,P21W\n"),
            SwapBikes.Replace(("stop", small!.Specification))
        );
        Assert.Equal(460, report.Comparison.Lamps[0].LightBefore!.Value.Lumens, 1e-6);
        Assert.Equal(125, report.Comparison.Lamps[0].LightAfter!.Value.Lumens, 1e-6);
        Assert.Contains(
            "125 lm instead of 460 lm, 27 % of the light",
            Assert.Single(report.About("stop")).Message,
            StringComparison.Ordinal
        );
        Assert.Empty(report.About("light"));
    }

    [Fact]
    public void A_driver_that_drops_out_after_the_swap_stands_against_it()
    {
        SwapReport report = SwapBikes.Compare(
            SwapBikes.LampsOnly("circuit,lamp,code\nrear lamp,stop,P21W\n"),
            SwapBikes.Replace(("stop", SwapBikes.Led(3, 24, 18)))
        );
        Assert.Contains(
            report.About("stop"),
            f => f.Severity == Severity.Fault && f.Message.Contains("drops out", StringComparison.Ordinal)
        );
        Assert.Equal(BikeVerdict.DoesNotSuit, report.Verdict);
    }
}
