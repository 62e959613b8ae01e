using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;
using static Lighting.Calc.Tests.Charging.ValleyPost;

namespace Lighting.Calc.Tests.Charging;

public class ChargingCurveTests
{
    private static readonly ChargingCurve s_curve = Curve((1000, 2), (2000, 6), (4000, 8));

    [Theory]
    [InlineData(1000, 2)]
    [InlineData(2000, 6)]
    [InlineData(4000, 8)]
    public void The_curve_goes_through_its_points(double rpm, double amperes)
    {
        ChargingOutput output = s_curve.OutputAt(Rpm(rpm));
        Assert.Equal(OutputRange.OnCurve, output.Range);
        Assert.Equal(amperes, output.Current!.Value.Amperes, 1e-12);
    }

    [Fact]
    public void Two_points_are_joined_by_a_straight_line() =>
        Assert.Equal(3.5, Curve((1000, 2), (3000, 5)).OutputAt(Rpm(2000)).Current!.Value.Amperes, 1e-12);

    [Theory]
    [InlineData(0, nameof(OutputRange.Standing))]
    [InlineData(999.9, nameof(OutputRange.BelowCurve))]
    [InlineData(4000.1, nameof(OutputRange.AboveCurve))]
    public void Outside_the_points_there_is_no_end_value(double rpm, string range)
    {
        ChargingOutput output = s_curve.OutputAt(Rpm(rpm));
        Assert.Equal(range, output.Range.ToString());
        Assert.Equal(rpm == 0 ? 0 : null, output.Current?.Amperes);
    }

    [Fact]
    public void A_curve_that_begins_with_zero_amps_gives_zero_below_its_cut_in() =>
        Assert.Equal(
            new ChargingOutput(OutputRange.BelowCutIn, ElectricCurrent.Zero),
            Curve((1200, 0), (2000, 3)).OutputAt(Rpm(600))
        );

    [Fact]
    public void A_curve_of_one_point_is_known_there_alone()
    {
        Assert.Equal(4, Curve((3000, 4)).OutputAt(Rpm(3000)).Current!.Value.Amperes);
        Assert.Null(Curve((3000, 4)).OutputAt(Rpm(3001)).Current);
    }

    [Fact]
    public void A_speed_given_twice_is_refused_by_its_number_and_condition()
    {
        var error = Assert.Throws<ArgumentException>(() =>
            Curves((2000, 3, "lights=low"), (1000, 1, "lights=low"), (2000, 4, "lights=low"))
        );
        Assert.Contains("2000 rpm twice when lights=low", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-1, 2)]
    [InlineData(1000, -0.1)]
    public void A_negative_speed_or_current_is_refused(double rpm, double amperes) =>
        Assert.Throws<ArgumentException>(() => Curve((rpm, amperes)));

    [Fact]
    public void Points_with_one_condition_form_one_curve_in_any_order_of_rows()
    {
        var curves = Curves((3000, 5, ""), (1500, 1, "lights=low|high"), (1000, 2, ""), (3000, 3, "LIGHTS=low|high"));
        Assert.Equal([2, 2], curves.Select(c => c.Points.Length));
        Assert.Equal(1000, curves[0].Points[0].Speed.RevolutionsPerMinute);
    }

    [Fact]
    public void A_falling_curve_is_known_as_one()
    {
        Assert.True(Curve((1000, 2), (2000, 6), (4000, 5)).Falls);
        Assert.False(s_curve.Falls);
    }

    [Property]
    public Property Between_two_points_the_curve_stays_between_their_amps() =>
        Prop.ForAll(
            Gen.Choose(0, 1000).Select(v => v / 100.0).ArrayOf(6).ToArbitrary(),
            Gen.Choose(1000, 5999).ToArbitrary(),
            (amperes, rpm) =>
            {
                var curve = Curve([.. amperes.Select((a, i) => ((i + 1) * 1000.0, a))]);
                int left = rpm / 1000 - 1;
                double low = Math.Min(amperes[left], amperes[left + 1]),
                    high = Math.Max(amperes[left], amperes[left + 1]);
                double value = curve.OutputAt(Rpm(rpm)).Current!.Value.Amperes;
                return value >= low - 1e-9 && value <= high + 1e-9;
            }
        );

    private static ChargingCurve Curve(params (double Rpm, double Amperes)[] points) =>
        Curves([.. points.Select(p => (p.Rpm, p.Amperes, ""))]).Single();

    private static IReadOnlyList<ChargingCurve> Curves(params (double, double, string)[] points) =>
        ChargingCurve.Of(Bike(points).Charging);
}
