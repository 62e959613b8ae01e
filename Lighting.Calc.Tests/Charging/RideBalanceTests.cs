using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;
using static Lighting.Calc.Tests.Charging.ValleyPost;

namespace Lighting.Calc.Tests.Charging;

public class RideBalanceTests
{
    private static readonly Bike s_bike = Bike((1000, 0, ""), (2000, 4, ""), (6000, 8, ""));

    [Fact]
    public void Charge_in_counts_with_its_efficiency_and_charge_out_in_full()
    {
        // 30 min at 2000 rpm: (4 − 3) A · 0.5 h · 0.9 = +0.45 Ah; 20 min at 1000 rpm: −3 A · 1/3 h = −1 Ah.
        RideBalance ride = Ride(3, 0.8, (2000, 30, ""), (1000, 20, ""));
        Assert.Equal(0.45, ride.Stretches[0].NetCharge!.Value.AmpereHours, 1e-12);
        Assert.Equal(-1, ride.Stretches[1].NetCharge!.Value.AmpereHours, 1e-12);
        Assert.Equal(-0.55, ride.NetCharge!.Value.AmpereHours, 1e-12);
        Assert.Equal(50, ride.Duration.Minutes, 1e-12);
        Assert.Equal(0.745, ride.FinalStateOfCharge!.Value.DecimalFractions, 1e-12);
        Assert.All(ride.Stretches, s => Assert.Equal(StateOfChargeLimit.None, s.Limit));
    }

    [Fact]
    public void A_battery_that_becomes_full_stays_full_and_says_when()
    {
        // 5 A · 0.9 = 4.5 Ah an hour into a 10 Ah battery at 91 %: the 0.9 Ah are in after 12 min.
        RideBalance ride = Ride(3, 0.91, (6000, 60, ""), (1000, 10, ""));
        Assert.Equal(StateOfChargeLimit.Full, ride.Stretches[0].Limit);
        Assert.Equal(12, ride.Stretches[0].LimitAfter!.Value.Minutes, 1e-9);
        Assert.Equal(1, ride.Stretches[0].StateOfCharge!.Value.DecimalFractions);
        Assert.Equal(0.95, ride.FinalStateOfCharge!.Value.DecimalFractions, 1e-12);
        Assert.Equal(4.0, ride.NetCharge!.Value.AmpereHours, 1e-12);
    }

    [Fact]
    public void A_battery_that_goes_flat_says_when()
    {
        RideBalance ride = Ride(6, 0.2, (1000, 60, ""));
        Assert.Equal(StateOfChargeLimit.Flat, ride.Stretches[0].Limit);
        Assert.Equal(20, ride.Stretches[0].LimitAfter!.Value.Minutes, 1e-9);
        Assert.Equal(0, ride.FinalStateOfCharge!.Value.DecimalFractions);
    }

    [Fact]
    public void A_stretch_above_the_curve_leaves_the_totals_unknown()
    {
        RideBalance ride = Ride(3, 1, (2000, 10, ""), (7000, 10, ""), (2000, 10, ""));
        Assert.Equal(OutputRange.AboveCurve, ride.Stretches[1].Range);
        Assert.Null(ride.Stretches[1].NetCharge);
        Assert.NotNull(ride.Stretches[2].NetCharge);
        Assert.Null(ride.NetCharge);
        Assert.Null(ride.FinalStateOfCharge);
    }

    [Fact]
    public void Without_a_known_capacity_the_charge_is_still_counted()
    {
        RideBalance ride = ChargingSystem
            .WithLoads((s_bike with { BatteryCapacity = null }).Riding((2000, 60, "")), Load(1))
            .Ride();
        Assert.Equal(2.7, ride.NetCharge!.Value.AmpereHours, 1e-12);
        Assert.Null(ride.FinalStateOfCharge);
    }

    [Fact]
    public void A_stop_with_the_engine_off_is_fed_by_the_battery_at_its_own_volts()
    {
        AverageLoad lamp = (_, volts) => ElectricCurrent.FromAmperes(volts.Volts / 10);
        RideBalance ride = ChargingSystem.WithLoads(s_bike.Riding((0, 60, ""), (2000, 60, "")), lamp).Ride();
        Assert.Equal(-1.265, ride.Stretches[0].Net!.Value.Amperes, 1e-12);
        Assert.Equal(4 - 1.35, ride.Stretches[1].Net!.Value.Amperes, 1e-12);
    }

    [Fact]
    public void Each_stretch_has_the_load_and_windings_of_its_own_setting()
    {
        Bike bike = Bike((1000, 1, ""), (3000, 3, ""), (1000, 2, "lights=low"), (3000, 4, "lights=low"))
            .Riding((3000, 60, ""), (3000, 60, "lights=low"));
        AverageLoad load = (setting, _) => ElectricCurrent.FromAmperes(setting.PositionOf("lights") == "low" ? 6 : 2);
        RideBalance ride = ChargingSystem.WithLoads(bike, load).Ride();
        Assert.Equal([1, 1], ride.Stretches.Select(s => s.Net!.Value.Amperes));
        Assert.Equal([2, 6], ride.Stretches.Select(s => s.Demand.Amperes));
    }

    [Property]
    public Property Net_charge_adds_up_over_stretches_however_they_are_cut() =>
        Prop.ForAll(
            Gen.Choose(10, 60).Select(v => v * 100.0).ToArbitrary(),
            Gen.Choose(1, 100).Select(v => (double)v).ToArbitrary(),
            Gen.Choose(1, 99).Select(v => v / 100.0).ToArbitrary(),
            (rpm, minutes, cut) =>
            {
                double whole = Ride(3, 0.5, (rpm, minutes, "")).NetCharge!.Value.AmpereHours;
                double parts = Ride(
                    3,
                    0.5,
                    (rpm, minutes * cut, ""),
                    (rpm, minutes * (1 - cut), "")
                ).NetCharge!.Value.AmpereHours;
                return Math.Abs(whole - parts) < 1e-9;
            }
        );

    private static RideBalance Ride(double load, double from, params (double, double, string)[] stretches) =>
        ChargingSystem
            .WithLoads(
                s_bike.Riding(stretches),
                Load(load),
                new ChargingOptions { InitialStateOfCharge = Ratio.FromDecimalFractions(from) }
            )
            .Ride();
}
