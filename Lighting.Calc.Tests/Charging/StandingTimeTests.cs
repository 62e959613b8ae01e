using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;
using static Lighting.Calc.Tests.Charging.ValleyPost;

namespace Lighting.Calc.Tests.Charging;

public class StandingTimeTests
{
    private static readonly Ratio s_half = Ratio.FromPercent(50);

    [Fact]
    public void An_ideal_battery_gives_half_its_capacity_in_half_its_time()
    {
        // 10 Ah, 2 A, k = 1: 5 h from full to empty, 2.5 h to a half.
        BatteryRunTime time = Standing(Load(2), s_half, new ChargingOptions { PeukertExponent = 1 });
        Assert.Equal(BatteryRunTimeOutcome.Reached, time.Outcome);
        Assert.Equal(2.5, time.Time!.Value.Hours, 1e-9);
        Assert.Equal(12.24, time.VoltageThere.Volts, 1e-12);
    }

    [Fact]
    public void A_quick_discharge_shortens_the_time_by_Peukerts_law() =>
        Assert.Equal(0.5 * 10 * Math.Pow(10 / (4 * 10.0), 1.2), Standing(Load(4), s_half).Time!.Value.Hours, 1e-9);

    [Fact]
    public void A_load_below_the_rated_current_gives_the_rated_capacity_and_no_more()
    {
        Assert.Equal(0.5 * 10 / 0.25, Standing(Load(0.25), s_half).Time!.Value.Hours, 1e-9);
        Assert.Equal(0.5 * 10, Standing(Load(1), s_half).Time!.Value.Hours, 1e-9);
    }

    [Fact]
    public void A_capacity_of_the_20_hour_rate_lasts_less_than_one_of_the_10_hour_rate() =>
        Assert.Equal(
            0.5 * 20 * Math.Pow(10 / (4 * 20.0), 1.2),
            Standing(Load(4), s_half, new ChargingOptions { RatedTime = Duration.FromHours(20) }).Time!.Value.Hours,
            1e-9
        );

    [Fact]
    public void A_lamp_that_dims_with_the_battery_lasts_longer_than_its_first_current_tells()
    {
        AverageLoad resistor = (_, volts) => ElectricCurrent.FromAmperes(volts.Volts / 12.65 * 3);
        double hours = Standing(resistor, s_half).Time!.Value.Hours;
        Assert.InRange(
            hours,
            Standing(Load(3), s_half).Time!.Value.Hours * 1.001,
            Standing(Load(3 * 12.24 / 12.65), s_half).Time!.Value.Hours * 0.999
        );
    }

    [Fact]
    public void What_cannot_be_told_has_an_outcome_and_no_time()
    {
        Assert.Equal(BatteryRunTimeOutcome.NoLoad, Outcome(Standing(Load(0), s_half)));
        Assert.Equal(
            BatteryRunTimeOutcome.AlreadyThere,
            Outcome(Standing(Load(1), s_half, new ChargingOptions { InitialStateOfCharge = Ratio.FromPercent(40) }))
        );
        Assert.Equal(
            BatteryRunTimeOutcome.CapacityNotKnown,
            Outcome(
                ChargingSystem
                    .WithLoads(Bike() with { BatteryCapacity = null }, Load(1))
                    .Standing(Setting.Empty, s_half)
            )
        );
        Assert.Equal(
            BatteryRunTimeOutcome.NoLoad,
            Outcome(Standing((_, volts) => ElectricCurrent.FromAmperes(volts.Volts > 12.3 ? 1 : 0), s_half))
        );

        static BatteryRunTimeOutcome Outcome(BatteryRunTime time)
        {
            Assert.Null(time.Time);
            return time.Outcome;
        }
    }

    [Fact]
    public void A_6_V_battery_rests_at_half_the_volts() =>
        Assert.Equal(
            6.12,
            ChargingSystem
                .WithLoads(Bike() with { SystemVoltage = ElectricPotential.FromVolts(6) }, Load(1))
                .Standing(Setting.Empty, s_half)
                .VoltageThere.Volts,
            1e-12
        );

    [Property]
    public Property Standing_time_falls_as_the_load_grows() =>
        Prop.ForAll(
            Gen.Choose(1, 2000).Select(v => v / 100.0).ToArbitrary(),
            Gen.Choose(1, 500).Select(v => v / 100.0).ToArbitrary(),
            (load, more) =>
                Standing(Load(load + more), s_half).Time!.Value.Hours < Standing(Load(load), s_half).Time!.Value.Hours
        );

    private static BatteryRunTime Standing(AverageLoad load, Ratio to, ChargingOptions? options = null) =>
        ChargingSystem.WithLoads(Bike(), load, options).Standing(Setting.Empty, to);
}
