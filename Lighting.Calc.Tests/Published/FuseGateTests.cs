using UnitsNet;

namespace Lighting.Calc.Tests.Published;

/// <summary>Opening times against the printed time gates.</summary>
/// <remarks>
/// Blade: ISO 8820-3 / SAE J1284 (from memory). Glass: UL 248-14 and 3AG data sheets (four hours at 100 %; an hour at
/// 135 %, two minutes at 200 %: confirmed). Figures are typed here as printed, beside the percent of rating; a 15 A and
/// a 7.5 A fuse must give the same.
/// </remarks>
public class FuseGateTests
{
    [Theory]
    [InlineData(135, 0.75, 1800)]
    [InlineData(160, 0.25, 50)]
    [InlineData(200, 0.15, 5)]
    [InlineData(350, 0.04, 0.5)]
    [InlineData(600, 0.02, 0.1)]
    [Against("fuse opening", "ISO 8820-3, and SAE J1284 (from memory)", CheckKind.Copied)]
    public void ISO_8820_3_blade_gates_are_met_on_the_gate(double percent, double leastSeconds, double mostSeconds)
    {
        foreach (double rating in new[] { 7.5, 15 })
        {
            OpeningTime time = At(FuseStyle.Blade, rating, percent);
            Assert.Equal(OpeningOutcome.Opens, time.Outcome);
            Publication.Meets(leastSeconds, time.Fastest!.Value.Seconds, 1e-9);
            Publication.Meets(mostSeconds, time.Slowest!.Value.Seconds, 1e-9);
        }
    }

    [Theory]
    [InlineData(160)]
    [InlineData(200)]
    [InlineData(350)]
    public void ISO_8820_3_blade_times_just_beside_a_gate_lie_on_both_sides_of_it(double percent)
    {
        OpeningTime below = At(FuseStyle.Blade, 10, percent - 1),
            on = At(FuseStyle.Blade, 10, percent),
            above = At(FuseStyle.Blade, 10, percent + 1);
        Assert.True(below.Fastest > on.Fastest && on.Fastest > above.Fastest);
        Assert.True(below.Slowest > on.Slowest && on.Slowest > above.Slowest);
        Assert.Equal(on.Slowest!.Value.Seconds, below.Slowest!.Value.Seconds, on.Slowest.Value.Seconds * 0.2);
    }

    [Fact]
    [Against("fuse opening", "ISO 8820-3, and SAE J1284 (from memory)", CheckKind.Copied)]
    public void ISO_8820_3_blade_carries_at_least_100_hours_at_110_percent()
    {
        OpeningTime time = At(FuseStyle.Blade, 15, 110);
        Assert.Equal(OpeningOutcome.BelowOpeningGates, time.Outcome);
        Publication.Meets(100, time.Fastest!.Value.Hours, 1e-9);
        Assert.Null(time.Slowest);
    }

    // Between 110 % and 135 % only the shortest time is published; that it opens at all is not.
    [Fact]
    public void ISO_8820_3_blade_at_134_percent_may_never_open()
    {
        OpeningTime time = At(FuseStyle.Blade, 15, 134);
        Assert.Equal(OpeningOutcome.BelowOpeningGates, time.Outcome);
        Assert.InRange(time.Fastest!.Value.Seconds, 0.75, 360000);
        Assert.Null(time.Slowest);
    }

    [Fact]
    public void ISO_8820_3_blade_above_its_last_gate_is_said_to_be_outside()
    {
        OpeningTime time = At(FuseStyle.Blade, 15, 601);
        Assert.Equal(OpeningOutcome.AboveGates, time.Outcome);
        Assert.Null(time.Fastest);
        Assert.InRange(time.Slowest!.Value.Seconds, 0.0990, 0.1);
        Assert.Contains("above the last gate (600 %)", time.Explanation, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(135, 3600)]
    [InlineData(200, 120)]
    [Against("fuse opening", "UL 248-14, and data sheets of glass fuses", CheckKind.Copied)]
    public void UL_248_14_glass_gates_are_met_on_the_gate(double percent, double mostSeconds)
    {
        OpeningTime time = At(FuseStyle.Glass, 20, percent);
        Assert.Equal(OpeningOutcome.Opens, time.Outcome);
        Publication.Meets(mostSeconds, time.Slowest!.Value.Seconds, 1e-9);
        Assert.Null(time.Fastest);
    }

    [Theory]
    [InlineData(134, nameof(OpeningOutcome.BelowOpeningGates), null)]
    [InlineData(136, nameof(OpeningOutcome.Opens), 3600.0)]
    [InlineData(199, nameof(OpeningOutcome.Opens), 126.0)]
    [InlineData(201, nameof(OpeningOutcome.AboveGates), 120.0)]
    public void UL_248_14_glass_just_beside_its_gates(double percent, string outcome, double? mostSeconds)
    {
        OpeningTime time = At(FuseStyle.Glass, 20, percent);
        Assert.Equal(outcome, time.Outcome.ToString());
        if (mostSeconds is { } most)
            Assert.InRange(time.Slowest!.Value.Seconds, most * 0.9, most);
        else
            Assert.Null(time.Slowest);
    }

    [Theory]
    [InlineData(FuseStyle.Blade, 0)]
    [InlineData(FuseStyle.Blade, 100)]
    [InlineData(FuseStyle.Glass, 99)]
    [InlineData(FuseStyle.Glass, 100)]
    public void Up_to_its_rating_a_fuse_carries(FuseStyle style, double percent)
    {
        OpeningTime time = At(style, 10, percent);
        Assert.Equal(OpeningOutcome.Carries, time.Outcome);
        Assert.Null(time.Fastest);
        Assert.Null(time.Slowest);
    }

    // Gates of their own: regular fuses of 35 A and 40 A, mini and maxi (second-hand: data sheets; maxi confirmed as
    // DIN 72581-3 form E).
    [Theory]
    [InlineData(FuseStyle.Blade, 40, 600, 0.02, 0.15)]
    [InlineData(FuseStyle.Blade, 35, 135, 0.75, 1800)]
    [InlineData(FuseStyle.Mini, 10, 350, 0.08, 0.5)]
    [InlineData(FuseStyle.Mini, 10, 600, 0.03, 0.1)]
    [InlineData(FuseStyle.Maxi, 40, 135, 60, 1800)]
    [InlineData(FuseStyle.Maxi, 40, 200, 2, 60)]
    [InlineData(FuseStyle.Maxi, 40, 350, 0.2, 7)]
    [InlineData(FuseStyle.Maxi, 40, 600, 0.04, 1)]
    [Against("fuse opening", "DIN 72581-3, and data sheets of mini, regular and maxi blades", CheckKind.Copied)]
    public void Gates_of_other_blades(
        FuseStyle style,
        double rating,
        double percent,
        double leastSeconds,
        double mostSeconds
    )
    {
        OpeningTime time = At(style, rating, percent);
        Publication.Meets(leastSeconds, time.Fastest!.Value.Seconds, 1e-9);
        Publication.Meets(mostSeconds, time.Slowest!.Value.Seconds, 1e-9);
    }

    // A regular fuse of 35 A or 40 A is printed to hold its rating for 100 h, and not 110 % of it as smaller ones.
    [Theory]
    [InlineData(FuseStyle.Blade, 30, true)]
    [InlineData(FuseStyle.Blade, 40, false)]
    [InlineData(FuseStyle.Maxi, 40, false)]
    public void Large_and_maxi_fuses_are_not_said_to_hold_110_percent(FuseStyle style, double rating, bool holds) =>
        Assert.Equal(holds, At(style, rating, 110).Fastest!.Value.Hours >= 100 - 1e-9);

    // Allowed continuous load of a maxi fuse of 40 A: 40 A to 20 °C, 34 A at 65 °C, 30 A at 85 °C, 25 A at 110 °C, 22 A
    // at 125 °C (data sheet of maxi blade fuses, second-hand). One straight line, that of the last point, is never
    // above.
    [Theory]
    [InlineData(65, 34)]
    [InlineData(85, 30)]
    [InlineData(110, 25)]
    [InlineData(125, 22)]
    [Against("fuse temperature", "data sheet of maxi blade fuses (second-hand), allowed load of 40 A", CheckKind.Model)]
    public void Allowed_load_of_a_warm_maxi_fuse(double celsius, double printedAmperes)
    {
        double amperes =
            40
            * FuseTemperature.Factor(FuseStyle.Maxi, Temperature.FromDegreesCelsius(celsius)).DecimalFractions
            * (1 - 0.0043 * 5);
        Assert.True(amperes <= printedAmperes);
        Publication.MeetsOrMisses(printedAmperes, amperes, 0.5, 0.06);
    }

    // Allowed continuous load of a mini fuse of 10 A at 80 °C: 7.3 A (data sheet, second-hand), against 23 °C.
    [Fact]
    [Against("fuse temperature", "data sheet of mini blade fuses of 58 V (second-hand)", CheckKind.Copied)]
    public void Allowed_load_of_a_warm_mini_fuse() =>
        Publication.Meets(
            7.3,
            10
                * FuseTemperature.Factor(FuseStyle.Mini, Temperature.FromDegreesCelsius(80)).DecimalFractions
                * (1 - 0.0047 * 2),
            0.05
        );

    // Glass data sheets: about 0.2 % less for each kelvin over 25 °C ("Fuse Derating Guide").
    [Fact]
    [Against("fuse temperature", "\"Fuse Derating Guide\", glass fuses", CheckKind.Copied)]
    public void Glass_data_sheets_a_fifth_of_a_percent_each_kelvin() =>
        Publication.Meets(
            92,
            FuseTemperature.Factor(FuseStyle.Glass, Temperature.FromDegreesCelsius(65)).Percent,
            1e-9
        );

    // 312/318 Series Lead-Free 3AG Fast-Acting Fuse, data sheet of 2012, "Nominal Melting I²t (A² sec)".
    [Theory]
    [InlineData(0.062, 0.000249)]
    [InlineData(0.1, 0.00102)]
    [InlineData(0.125, 0.00289)]
    [InlineData(0.15, 0.00550)]
    [InlineData(0.175, 0.00960)]
    [InlineData(0.187, 0.0128)]
    [InlineData(0.2, 0.0165)]
    [InlineData(0.25, 0.0355)]
    [Against("fuse melting energy", "data sheets of 3AG fast-acting fuses, 2012 to 2018", CheckKind.Copied)]
    public void Data_sheet_of_3AG_fuses_nominal_melting_energy(double amperes, double printed) =>
        Publication.Meets(printed, FuseMelting.AmpereSquaredSeconds(FuseStyle.Glass, amperes)!.Value, 1e-12);

    // Nothing is read between or beyond the printed ratings, nor for another style.
    [Theory]
    [InlineData(FuseStyle.Glass, 0.22)]
    [InlineData(FuseStyle.Glass, 15)]
    [InlineData(FuseStyle.Blade, 0.25)]
    public void Melting_energy_of_other_fuses_is_not_known(FuseStyle style, double amperes) =>
        Assert.Null(FuseMelting.AmpereSquaredSeconds(style, amperes));

    private static OpeningTime At(FuseStyle style, double rating, double percent) =>
        OpeningTime.Calculate(
            style,
            ElectricCurrent.FromAmperes(rating),
            ElectricCurrent.FromAmperes(rating * percent / 100)
        );
}
