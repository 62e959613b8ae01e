using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;
using static Lighting.Calc.Tests.Charging.ValleyPost;

namespace Lighting.Calc.Tests.Charging;

public class PermanentMagnetMachineTests
{
    private static readonly PermanentMagnetAlternator s_machine = new(ElectricCurrent.FromAmperes(13.5), Rpm(1600));

    [Theory]
    // x / √(1 + x²), exact arithmetic.
    [InlineData(0.5, 0.4472136)]
    [InlineData(1, 0.7071068)]
    [InlineData(2, 0.8944272)]
    [InlineData(3, 0.9486833)]
    [InlineData(5, 0.9805807)]
    public void The_output_follows_the_closed_form(double x, double share) =>
        Assert.Equal(13.5 * share, s_machine.OutputAt(Rpm(1600 * x)).Amperes, 13.5 * 1e-7);

    [Fact]
    public void The_break_even_speed_of_three_fifths_is_three_quarters_of_the_corner()
    {
        // r = 0.6: x = 0.6 / √(1 − 0.36) = 0.75.
        Assert.Equal(
            1200,
            s_machine.SpeedFor(ElectricCurrent.FromAmperes(0.6 * 13.5))!.Value.RevolutionsPerMinute,
            1e-9
        );
        BreakEven breakEven = Fitted(Bike() with { Charging = PointsOf(s_machine, 1000, 4000) }, 0.6 * 13.5)
            .BalanceIn(Setting.Empty)
            .BreakEven;
        Assert.Equal(1200, breakEven.Speed!.Value.RevolutionsPerMinute, 1e-3);
    }

    [Theory]
    [InlineData(13.5, null)]
    [InlineData(20, null)]
    [InlineData(0, 0.0)]
    [InlineData(-1, 0.0)]
    public void A_current_it_never_gives_has_no_speed(double amperes, double? rpm) =>
        Assert.Equal(rpm, s_machine.SpeedFor(ElectricCurrent.FromAmperes(amperes))?.RevolutionsPerMinute);

    [Fact]
    public void A_machine_of_no_current_or_no_corner_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new PermanentMagnetAlternator(ElectricCurrent.Zero, Rpm(1)));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new PermanentMagnetAlternator(ElectricCurrent.FromAmperes(1), Rpm(0))
        );
    }

    [Fact]
    public void Residuals_are_point_minus_machine_and_least_squares_beats_any_neighbour()
    {
        Bike bike = Bike((1000, 5.2, ""), (2000, 10.1, ""), (3000, 12.3, ""), (6000, 12.9, ""));
        PermanentMagnetFit fit = Fitted(bike, 1).Machines.Single();
        Assert.All(
            fit.Residuals,
            r =>
                Assert.Equal(
                    r.Point.Current.Amperes - fit.Machine.OutputAt(r.Point.Speed).Amperes,
                    r.Residual.Amperes,
                    1e-12
                )
        );
        Assert.True(Math.Sqrt(fit.Residuals.Sum(r => Math.Pow(r.Residual.Amperes, 2)) / 4) > 0.05);
        foreach ((double current, double corner) in new[] { (1.001, 1.0), (0.999, 1.0), (1.0, 1.001), (1.0, 0.999) })
        {
            var other = new PermanentMagnetAlternator(
                fit.Machine.MaximumCurrent * current,
                fit.Machine.CornerSpeed * corner
            );
            Assert.True(
                fit.Residuals.Sum(r => Math.Pow(r.Residual.Amperes, 2))
                    < bike.Charging.Sum(p => Math.Pow(p.Current.Amperes - other.OutputAt(p.Speed).Amperes, 2))
            );
        }
    }

    [Theory]
    [InlineData(3.0, 6.0, "in proportion")]
    [InlineData(3.0, 7.0, "in proportion")]
    [InlineData(5.0, 5.0, "does not grow")]
    [InlineData(5.0, 3.0, "does not grow")]
    [InlineData(0.0, 3.0, "two or more points")]
    public void Points_that_fix_no_machine_are_refused_with_the_reason(double first, double second, string reason)
    {
        var error = Assert.Throws<ArgumentException>(() => Fitted(Bike((1000, first, ""), (2000, second, "")), 1));
        Assert.Contains(reason, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fitted_machine_tells_when_it_is_asked_beyond_its_points()
    {
        ChargingSystem system = Fitted(Bike() with { Charging = PointsOf(s_machine, 1000, 4000) }, 1);
        Assert.Equal(OutputRange.Fitted, system.OutputAt(Rpm(4000), Setting.Empty).Range);
        Assert.Equal(OutputRange.FittedBeyondPoints, system.OutputAt(Rpm(4001), Setting.Empty).Range);
        Assert.Equal(OutputRange.FittedBeyondPoints, system.OutputAt(Rpm(999), Setting.Empty).Range);
        Assert.Equal(
            s_machine.OutputAt(Rpm(8000)).Amperes,
            system.OutputAt(Rpm(8000), Setting.Empty).Current!.Value.Amperes,
            1e-5
        );
    }

    [Fact]
    public void Two_fitted_windings_break_even_where_their_sum_meets_the_load()
    {
        Bike bike = Bike((1000, 2, ""), (4000, 4, ""), (1000, 1, "lights=low"), (4000, 3, "lights=low"));
        ChargingBalance balance = Fitted(bike, 5).BalanceIn(bike.In("lights=low"));
        Assert.Equal(0, balance.At(balance.BreakEven.Speed!.Value).Net!.Value.Amperes, 1e-9);
        Assert.Equal(BreakEvenOutcome.Never, Fitted(bike, 20).BalanceIn(bike.In("lights=low")).BreakEven.Outcome);
    }

    [Property]
    public Property A_fit_recovers_the_machine_that_made_the_points() =>
        Prop.ForAll(
            Gen.Choose(10, 400).Select(v => v / 10.0).ToArbitrary(),
            Gen.Choose(300, 6000).Select(v => (double)v).ToArbitrary(),
            Gen.Choose(2, 7).ToArbitrary(),
            (maximum, corner, count) =>
            {
                var machine = new PermanentMagnetAlternator(ElectricCurrent.FromAmperes(maximum), Rpm(corner));
                double[] speeds = [.. Enumerable.Range(1, count).Select(i => 800.0 * i)];
                PermanentMagnetFit fit = Fitted(Bike() with { Charging = PointsOf(machine, speeds) }, 1)
                    .Machines.Single();
                return Math.Abs(fit.Machine.MaximumCurrent.Amperes / maximum - 1) < 1e-5
                    && Math.Abs(fit.Machine.CornerSpeed.RevolutionsPerMinute / corner - 1) < 1e-5;
            }
        );

    private static ChargingSystem Fitted(Bike bike, double load) =>
        ChargingSystem.WithLoads(bike, Load(load), new ChargingOptions { Model = ChargingModel.FittedMachine });
}
