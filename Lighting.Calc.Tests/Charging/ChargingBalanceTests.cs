using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;
using static Lighting.Calc.Tests.Charging.ValleyPost;

namespace Lighting.Calc.Tests.Charging;

public class ChargingBalanceTests
{
    private static readonly Bike s_bike = Bike((1000, 0, ""), (2000, 4, ""), (3000, 6, ""), (6000, 7, ""));

    [Fact]
    public void On_a_straight_line_the_break_even_speed_is_where_the_line_meets_the_load()
    {
        // 1 A at 1000 rpm, 5 A at 5000 rpm: 1 mA a revolution, so that 3.2 A are met at 3200 rpm.
        BreakEven breakEven = BreakEvenOf(Bike((1000, 1, ""), (5000, 5, "")), 3.2);
        Assert.Equal(BreakEvenOutcome.At, breakEven.Outcome);
        Assert.Equal(3200, breakEven.Speed!.Value.RevolutionsPerMinute, 1e-6);
    }

    [Fact]
    public void At_the_break_even_speed_the_battery_neither_gains_nor_loses()
    {
        ChargingBalance balance = System(s_bike, 4.7).BalanceIn(Setting.Empty);
        Assert.Equal(0, balance.At(balance.BreakEven.Speed!.Value).Net!.Value.Amperes, 1e-9);
    }

    [Theory]
    [InlineData(7.001, BreakEvenOutcome.Never)]
    [InlineData(7, BreakEvenOutcome.At)]
    [InlineData(0, BreakEvenOutcome.Always)]
    public void Never_and_always_are_outcomes_of_their_own(double load, BreakEvenOutcome expected)
    {
        BreakEven breakEven = BreakEvenOf(s_bike, load);
        Assert.Equal(expected, breakEven.Outcome);
        Assert.Equal(expected == BreakEvenOutcome.At ? 6000 : null, breakEven.Speed?.RevolutionsPerMinute);
    }

    [Fact]
    public void A_load_below_the_first_point_breaks_even_somewhere_below_the_curve()
    {
        BreakEven breakEven = BreakEvenOf(Bike((1500, 3, ""), (3000, 6, "")), 2);
        Assert.Equal(BreakEvenOutcome.BelowCurve, breakEven.Outcome);
        Assert.Equal(1500, breakEven.Speed!.Value.RevolutionsPerMinute);
    }

    [Fact]
    public void A_bike_without_a_charging_list_has_no_break_even() =>
        Assert.Equal(BreakEvenOutcome.NotKnown, BreakEvenOf(Bike(), 2).Outcome);

    [Fact]
    public void A_falling_curve_tells_where_the_load_is_lost_again()
    {
        BreakEven breakEven = BreakEvenOf(Bike((1000, 0, ""), (2000, 8, ""), (4000, 4, "")), 6);
        Assert.InRange(breakEven.Speed!.Value.RevolutionsPerMinute, 1000, 2000);
        Assert.InRange(breakEven.LostAgainAt!.Value.RevolutionsPerMinute, 2000, 4000);
        Assert.Null(BreakEvenOf(s_bike, 5).LostAgainAt);
    }

    [Fact]
    public void A_lights_winding_adds_to_the_first_in_its_settings_alone()
    {
        Bike bike = Bike((1000, 1, ""), (3000, 3, ""), (1000, 2, "lights=low|high"), (3000, 4, "lights=low|high"));
        ChargingSystem system = System(bike, 0);
        Assert.Equal(2, system.OutputAt(Rpm(2000), bike.In("")).Current!.Value.Amperes, 1e-12);
        Assert.Equal(5, system.OutputAt(Rpm(2000), bike.In("lights=low")).Current!.Value.Amperes, 1e-12);
    }

    [Fact]
    public void A_winding_whose_curve_ends_early_leaves_the_sum_unknown_above()
    {
        Bike bike = Bike((1000, 1, ""), (6000, 3, ""), (1000, 2, "lights=low"), (3000, 4, "lights=low"));
        ChargingOutput output = System(bike, 0).OutputAt(Rpm(4000), bike.In("lights=low"));
        Assert.Equal(new ChargingOutput(OutputRange.AboveCurve, null), output);
        Assert.NotNull(System(bike, 0).OutputAt(Rpm(4000), bike.In("")).Current);
    }

    [Fact]
    public void A_second_winding_that_cuts_in_later_does_not_hide_a_break_even_below_its_cut_in()
    {
        // The first winding alone gives 2 A at 1500 rpm; the second begins at 2000 rpm.
        Bike bike = Bike((1000, 1, ""), (3000, 5, ""), (2000, 0, "lights=low"), (3000, 4, "lights=low"));
        Assert.Equal(
            1500,
            System(bike, 2).BalanceIn(bike.In("lights=low")).BreakEven.Speed!.Value.RevolutionsPerMinute,
            1e-6
        );
    }

    [Fact]
    public void A_setting_in_which_no_winding_works_gets_nothing()
    {
        Bike bike = Bike((1000, 2, "lights=low"), (3000, 4, "lights=low"));
        Assert.Equal(
            new ChargingOutput(OutputRange.NoWinding, ElectricCurrent.Zero),
            System(bike, 1).OutputAt(Rpm(2000), bike.In(""))
        );
        Assert.Equal(BreakEvenOutcome.Never, System(bike, 1).BalanceIn(bike.In("")).BreakEven.Outcome);
    }

    [Fact]
    public void The_field_of_an_excited_alternator_is_a_load_while_the_engine_runs()
    {
        var options = new ChargingOptions { FieldCurrent = ElectricCurrent.FromAmperes(1.5) };
        ChargingBalance balance = ChargingSystem.WithLoads(s_bike, Load(2), options).BalanceIn(Setting.Empty);
        Assert.Equal(4 - 3.5, balance.At(Rpm(2000)).Net!.Value.Amperes, 1e-12);
        Assert.Equal(-2, balance.At(Rpm(0)).Net!.Value.Amperes, 1e-12);
        Assert.Equal(
            BreakEvenOf(s_bike, 3.5).Speed!.Value.RevolutionsPerMinute,
            balance.BreakEven.Speed!.Value.RevolutionsPerMinute,
            1e-6
        );
    }

    [Theory]
    [InlineData(RegulatorKind.None, null, 5.0, null)]
    [InlineData(RegulatorKind.Series, null, 0.0, null)]
    [InlineData(RegulatorKind.Shunt, null, 0.0, 5 * 13.5)]
    [InlineData(RegulatorKind.Shunt, 3.0, 2.0, 3 * 13.5)]
    [InlineData(RegulatorKind.NotStated, null, null, null)]
    public void The_surplus_reaches_a_full_battery_as_the_regulator_allows(
        RegulatorKind regulator,
        double? limit,
        double? intoBattery,
        double? shuntWatts
    )
    {
        var options = new ChargingOptions
        {
            Regulator = regulator,
            ShuntLimit = limit is { } a ? ElectricCurrent.FromAmperes(a) : null,
        };
        BalancePoint point = ChargingSystem.WithLoads(s_bike, Load(2), options).BalanceIn(Setting.Empty).At(Rpm(6000));
        Assert.Equal(5, point.Net!.Value.Amperes, 1e-12);
        Assert.Equal(intoBattery, point.OverchargeCurrent?.Amperes);
        Assert.Equal(shuntWatts, (double?)point.ShuntHeat?.Watts);
        Assert.Equal(7 * 1.7, (double)point.RectifierHeat!.Value.Watts, 1e-12);
    }

    [Fact]
    public void The_grid_has_round_steps_and_ends_on_the_last_point()
    {
        double[] grid = [.. System(Bike((1200, 0, ""), (7650, 9, "")), 1).Grid().Select(s => s.RevolutionsPerMinute)];
        Assert.Equal(0, grid[0]);
        Assert.Equal(7650, grid[^1]);
        Assert.All(grid[..^1], rpm => Assert.Equal(0, rpm % 500));
        Assert.True(grid.Length <= 25);
    }

    [Property]
    public Property A_further_lamp_never_lowers_the_break_even_speed() =>
        Prop.ForAll(
            Gen.Choose(1, 650).Select(v => v / 100.0).ToArbitrary(),
            Gen.Choose(1, 300).Select(v => v / 100.0).ToArbitrary(),
            (load, lamp) =>
            {
                BreakEven before = BreakEvenOf(s_bike, load),
                    after = BreakEvenOf(s_bike, load + lamp);
                return after.Outcome == BreakEvenOutcome.Never
                    || after.Speed!.Value.RevolutionsPerMinute > before.Speed!.Value.RevolutionsPerMinute;
            }
        );

    private static BreakEven BreakEvenOf(Bike bike, double load) =>
        System(bike, load).BalanceIn(Setting.Empty).BreakEven;

    private static ChargingSystem System(Bike bike, double load) => ChargingSystem.WithLoads(bike, Load(load));
}
