using UnitsNet;

namespace Lighting.Calc.Tests.Fuses;

/// <summary>The ends of every range, and the words at them.</summary>
public class FuseLimitTests
{
    [Fact]
    public void A_fuse_of_no_rating_and_a_current_below_zero_are_refused()
    {
        Refused(
            "rating",
            "A fuse's rating is above zero.",
            () => OpeningTime.Calculate(FuseStyle.Blade, ElectricCurrent.Zero, ElectricCurrent.Zero)
        );
        Refused(
            "current",
            "A current is zero or more.",
            () =>
                OpeningTime.Calculate(FuseStyle.Blade, ElectricCurrent.FromAmperes(10), ElectricCurrent.FromAmperes(-1))
        );
    }

    [Theory]
    [InlineData(-41)]
    [InlineData(126)]
    public void Air_colder_or_warmer_than_data_sheets_draw_is_refused(double celsius) =>
        Refused(
            "ambient",
            "The air round a fuse is -40 °C to 125 °C.",
            () => FuseTemperature.Factor(FuseStyle.Blade, Temperature.FromDegreesCelsius(celsius))
        );

    [Theory]
    [InlineData(-40)]
    [InlineData(125)]
    public void The_ends_of_that_span_belong_to_it(double celsius) =>
        Assert.InRange(
            FuseTemperature.Factor(FuseStyle.Blade, Temperature.FromDegreesCelsius(celsius)).DecimalFractions,
            0.5,
            1
        );

    [Fact]
    public void A_resistance_ratio_beyond_the_table_of_tungsten_is_refused() =>
        Refused("resistanceRatio", "The table of tungsten runs from", () => Tungsten.KelvinAt(17.63));

    [Fact]
    public void A_steady_limit_of_nothing_or_over_the_rating_and_a_short_of_no_time_are_refused()
    {
        foreach (double percent in new[] { 0, 100.1 })
            Refused(
                "options",
                "The steady limit is above 0 to 100 %.",
                () =>
                    FuseBike.Check(
                        FuseBike.Round(),
                        new FuseOptions { ContinuousLoadFactor = Ratio.FromPercent(percent) }
                    )
            );
        Refused(
            "options",
            "The longest short is above zero.",
            () => FuseBike.Check(FuseBike.Round(), new FuseOptions { LongestShort = Duration.Zero })
        );
        Assert.NotEmpty(
            FuseBike.Check(FuseBike.Round(), new FuseOptions { ContinuousLoadFactor = Ratio.FromPercent(100) })
        );
    }

    [Fact]
    public void Points_of_another_bike_or_none_are_refused_in_words()
    {
        Assert.StartsWith(
            "At least one operating point is needed.",
            Assert
                .Throws<ArgumentException>(
                    "settings",
                    () =>
                        FuseCheck.Evaluate(
                            FuseBike.Round(),
                            [],
                            cancellationToken: TestContext.Current.CancellationToken
                        )
                )
                .Message,
            StringComparison.Ordinal
        );
        Bike without = FuseBike.Round() with { Fuses = [] };
        Assert.StartsWith(
            "The operating points are not of this bike.",
            Assert
                .Throws<ArgumentException>(
                    "settings",
                    () =>
                        FuseCheck.Evaluate(
                            without,
                            FuseBike.Solve(FuseBike.Round()),
                            cancellationToken: TestContext.Current.CancellationToken
                        )
                )
                .Message,
            StringComparison.Ordinal
        );
    }

    // 12 V over 0.5 Ω and 1.5 Ω in series.
    [Fact]
    public void A_cold_filament_takes_the_volts_over_its_own_and_the_resistance_before_it() =>
        Assert.Equal(6, FilamentInrush.PeakAmperes(12, 0.5, 1.5), 1e-12);

    // 5 A is 75 % of 6.67 A; the next blade is 7.5 A.
    [Fact]
    public void Without_wires_only_the_smallest_rating_is_known()
    {
        FuseSuitability fuse = Alone(5);
        Assert.Equal(
            "the load needs at least 7.5 A; how large it may be depends on the wires, which are not listed",
            fuse.Advice.Explanation
        );
        Assert.Null(fuse.Protection.Protects);
        Assert.Equal(
            "the wires are not listed, so whether it protects them cannot be checked",
            fuse.Protection.Explanation
        );
    }

    // The largest blade is 40 A, which carries 30 A without end.
    [Fact]
    public void A_load_that_no_blade_carries_must_fall_or_be_divided() =>
        Assert.Equal(
            "no standard blade fuse carries this load: reduce the continuous load to 30 A; or split the circuit over "
                + "two fuses",
            Alone(50).Advice.Explanation
        );

    private static FuseSuitability Alone(double amperes) =>
        FuseBike
            .Check(
                new Bike
                {
                    Lamps = [FuseBike.Load("lamp", LampType.Fixed, 12, amperes)],
                    Fuses = [FuseBike.Fuse("main", 10)],
                }
            )
            .Single();

    private static void Refused(string parameter, string message, Func<object?> action) =>
        Assert.StartsWith(
            message,
            Assert.Throws<ArgumentOutOfRangeException>(parameter, action).Message,
            StringComparison.Ordinal
        );
}
