using Lighting.Calc.Tests.Fuses;
using UnitsNet;

namespace Lighting.Calc.Tests.Tolerances;

/// <summary>What a tolerance report says of a bike.</summary>
public class ToleranceReportTests
{
    [Fact]
    public void Without_spreads_every_percentile_is_the_listed_value_and_every_verdict_holds()
    {
        ToleranceReport report = ToleranceBikes.Report(
            ToleranceBikes.Demo("valley-twin"),
            new ToleranceOptions { Samples = 100, Scale = Ratio.Zero }
        );
        foreach (LampTolerance lamp in report.Lamps)
        {
            Assert.Equal(lamp.Voltage.Listed!.Value.Volts, lamp.Voltage.Percentile5!.Value.Volts, 1e-9);
            Assert.Equal(lamp.Voltage.Listed!.Value.Volts, lamp.Voltage.Percentile95!.Value.Volts, 1e-9);
            Assert.Null(lamp.Voltage.MattersMost);
        }

        Assert.All(report.Verdicts, v => Assert.Equal(1, v.Probability.DecimalFractions));
    }

    [Fact]
    public void The_listed_results_are_those_of_the_check()
    {
        Bike bike = ToleranceBikes.Demo("valley-twin");
        ToleranceReport report = ToleranceBikes.Report(bike, new ToleranceOptions { Samples = 100 });
        BikeReport check = BikeCheck.Evaluate(bike, null, TestContext.Current.CancellationToken);
        Assert.Equal(
            check.Charging!.Worst!.BreakEven.Speed!.Value.RevolutionsPerMinute,
            report.BreakEven!.Listed!.Value.RevolutionsPerMinute,
            1e-6
        );
        Assert.Equal(
            check.Charging.Ride!.NetCharge!.Value.AmpereHours,
            report.RideBalance!.Listed!.Value.AmpereHours,
            1e-9
        );
        Assert.Equal(check.Fuses[0].Steady.WorstCurrent.Amperes, report.Fuses[0].Current.Listed!.Value.Amperes, 1e-9);
        foreach (VoltageDropBreakdown drop in check.WorstDrops)
            Assert.Equal(
                drop.Lamp.Voltage.Volts,
                report.Lamps.Single(l => l.Lamp.Lamp == drop.Lamp.Lamp.Lamp).Voltage.Listed!.Value.Volts,
                1e-8
            );
    }

    [Fact]
    public void The_twins_72_settings_are_24_electrical_states()
    {
        Bike bike = ToleranceBikes.Demo("valley-twin");
        Assert.Equal(72, SettingEnumeration.Count(bike, Condition.Always));
        Assert.Equal(24, ToleranceBikes.Report(bike, new ToleranceOptions { Samples = 100 }).States);
    }

    [Fact]
    public void A_fuse_at_the_edge_of_its_load_suits_on_half_of_the_bikes()
    {
        // 15 A × 75 % = 11.25 A, exactly the listed load, which spreads alike to both sides.
        VerdictTolerance fuse = ToleranceBikes
            .Report(ToleranceBikes.Resistors(11.25), new ToleranceOptions { Samples = 20_000 })
            .Verdicts.Single(v => v.Subject == "main");
        Assert.Equal("suits", fuse.Verdict);
        Assert.Equal(0.5, fuse.Probability.DecimalFractions, 3 * Math.Sqrt(0.25 / 20_000));
    }

    [Fact]
    public void An_overloaded_fuse_keeps_that_verdict_on_the_bikes_that_overload_it()
    {
        VerdictTolerance fuse = ToleranceBikes
            .Report(ToleranceBikes.Resistors(11.5), new ToleranceOptions { Samples = 2000 })
            .Verdicts.Single(v => v.Subject == "main");
        Assert.Equal("overloaded", fuse.Verdict);
        Assert.InRange(fuse.Probability.DecimalFractions, 0.6, 0.99);
    }

    [Fact]
    public void A_fuse_too_large_for_its_wire_is_so_on_every_bike()
    {
        Bike twin = ToleranceBikes.Demo("valley-twin");
        Bike overfused = twin with { Fuses = [twin.Fuses[0] with { Rating = ElectricCurrent.FromAmperes(30) }] };
        VerdictTolerance fuse = ToleranceBikes
            .Report(overfused, new ToleranceOptions { Samples = 100 })
            .Verdicts.Single(v => v.Subject == "main");
        Assert.Equal("too large for the wire", fuse.Verdict);
        Assert.Equal(1, fuse.Probability.DecimalFractions);
    }

    [Fact]
    public void A_short_that_clears_on_some_bikes_only_is_judged_in_full_on_the_first_of_them()
    {
        // The short draws 12.65 V/0.31 Ω = 41 A. It opens the fuse above 135 % of its rating, as long as the joint has
        // under about 0.615 Ω: 92 % of bikes by the lognormal (72 % have under 0.405 Ω), and the wire withstands it.
        Bike bike = Bike.ForSystem(ElectricPotential.FromVolts(12)) with
        {
            Runs =
            [
                FuseBike.Run("feed", "out", "lamp", "4 mm2", 1, jointMilliohms: 300),
                FuseBike.Run("back", "earth", Bike.BatteryMinus, "4 mm2", 1),
            ],
            Fuses = [FuseBike.Fuse("main", 15, Bike.BatteryPlus, "out")],
            Lamps = [FuseBike.Load("heater", LampType.Resistor, 12, 2, "lamp", "earth")],
        };
        VerdictTolerance fuse = ToleranceBikes
            .Report(bike, new ToleranceOptions { Samples = 300 })
            .Verdicts.Single(v => v.Subject == "main");
        Assert.Equal("suits", fuse.Verdict);
        Assert.Equal(0.92, fuse.Probability.DecimalFractions, 3 * Math.Sqrt(0.92 * 0.08 / 200));
    }

    [Fact]
    public void Bikes_that_never_break_even_count_above_all_speeds()
    {
        Bike twin = ToleranceBikes.Demo("valley-twin");
        // The heaviest load wants about 7.4 A on average; a stator of 7.5 A at its best covers it on about half of the
        // bikes.
        Bike weak = twin with
        {
            Charging = [.. twin.Charging.Select(c => c with { Current = c.Current * (7.5 / 13.0) })],
        };
        ToleranceReport report = ToleranceBikes.Report(weak, new ToleranceOptions { Samples = 2000 });
        Assert.NotNull(report.BreakEven!.Percentile5);
        Assert.Null(report.BreakEven.Percentile95);
        Assert.Null(report.BreakEven.Mean);
        Assert.Empty(report.BreakEven.Shares);
        Assert.InRange(report.Verdicts.Single(v => v.Subject == "charging").Probability.DecimalFractions, 0.2, 0.9);
    }

    [Fact]
    public void More_spread_in_the_parts_widens_the_results()
    {
        ResultSpread<ElectricCurrent> all = Of(100),
            half = Of(50);
        Assert.Equal(0.5, half.StandardDeviation!.Value / all.StandardDeviation!.Value, 0.05);

        static ResultSpread<ElectricCurrent> Of(double percent) =>
            ToleranceBikes
                .Report(
                    ToleranceBikes.Resistors(4),
                    new ToleranceOptions { Samples = 5000, Scale = Ratio.FromPercent(percent) }
                )
                .Fuses[0]
                .Current;
    }

    [Fact]
    public void Work_can_be_stopped_and_tells_how_far_it_is()
    {
        using var stop = new CancellationTokenSource();
        var progress = new Counter(stop);
        Assert.ThrowsAny<OperationCanceledException>(() =>
            ToleranceCheck.Evaluate(
                ToleranceBikes.Demo("valley-twin"),
                new ToleranceOptions { Samples = 1_000_000, Threads = 1 },
                progress,
                stop.Token
            )
        );
        Assert.InRange(progress.Last, 1e-5, 0.01);
    }

    [Fact]
    public void What_cannot_be_reckoned_is_refused()
    {
        Bike twin = ToleranceBikes.Demo("valley-twin");
        Assert.Throws<ArgumentException>(() =>
            ToleranceBikes.Report(twin with { Lighting = LightingSupply.Direct }, new ToleranceOptions())
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            ToleranceBikes.Report(twin, new ToleranceOptions { Samples = 99 })
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            ToleranceBikes.Report(twin, new ToleranceOptions { Scale = Ratio.FromPercent(101) })
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            ToleranceBikes.Report(twin, new ToleranceOptions { Threads = 0 })
        );
        Assert.Throws<ArgumentException>(() =>
            ToleranceBikes.Report(
                twin,
                new ToleranceOptions
                {
                    Check = new CheckOptions
                    {
                        Charging = ChargingOptions.Default with { Model = ChargingModel.FittedMachine },
                    },
                }
            )
        );
    }

    [Fact]
    public void More_numbers_than_are_kept_are_refused()
    {
        Bike many = ToleranceBikes.Resistors([.. Enumerable.Repeat(0.1, 80)]);
        Assert.Contains(
            "use fewer samples",
            Assert
                .Throws<ArgumentException>(() =>
                    ToleranceBikes.Report(many, new ToleranceOptions { Samples = ToleranceOptions.MostSamples })
                )
                .Message
        );
    }

    private sealed class Counter(CancellationTokenSource stop) : IProgress<Ratio>
    {
        public double Last { get; private set; }

        public void Report(Ratio value)
        {
            Last = value.DecimalFractions;
            stop.Cancel();
        }
    }
}
