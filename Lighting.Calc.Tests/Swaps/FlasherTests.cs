namespace Lighting.Calc.Tests.Swaps;

public class FlasherTests
{
    private const string Lamps =
        "circuit,lamp,code,quantity,lit "
        + "when\nindicators,left,P21W,2,turn=left\nindicators,right,P21W,2,turn=right\nhead,head,R2 low,1,lights=on\n";

    private static SwapReport Report(string bike, double watts) =>
        SwapBikes.Compare(
            SwapBikes.LampsOnly(Lamps, bike),
            SwapBikes.Replace(("left", SwapBikes.Led(watts)), ("right", SwapBikes.Led(watts)))
        );

    [Fact]
    public void A_thermal_flasher_starves_on_LEDs_and_the_fault_says_by_how_much()
    {
        SwapReport report = Report("flasher,thermal\n", 3);
        Assert.Equal(2, report.Flashers.Length);
        Assert.Equal(
            [42.0, 6.0, 42.0],
            new[]
            {
                report.Flashers[0].NominalBefore,
                report.Flashers[0].NominalAfter,
                report.Flashers[0].FlasherLoad,
            }.Select(p => (double)p.Watts)
        );
        Finding finding = Assert.Single(report.About("flasher"));
        Assert.Equal(Severity.Fault, finding.Severity);
        Assert.Contains(
            "6 W on the flasher (turn=left, turn=right) instead of 42 W, 14 % of its load",
            finding.Message,
            StringComparison.Ordinal
        );
        Assert.Contains("60 to 120 flashes a minute", finding.Message, StringComparison.Ordinal);
        Assert.Equal(BikeVerdict.DoesNotSuit, report.Verdict);
    }

    // 13.5 V: two P21W draw 2 · 25/13.5 = 3.704 A, two LEDs of 3 W 0.444 A; the squares' ratio is 0.0144.
    [Fact]
    public void The_heat_in_the_strip_falls_by_the_square_of_the_current()
    {
        FlasherChange flasher = Report("flasher,thermal\n", 3).Flashers[0];
        Assert.Equal(3.7037, flasher.CurrentBefore.Amperes, 1e-4);
        Assert.Equal(0.4444, flasher.CurrentAfter.Amperes, 1e-4);
        Assert.Equal(0.0144, flasher.HeatShare.DecimalFractions, 1e-6);
    }

    [Theory]
    [InlineData(14.6, Severity.Fault)]
    [InlineData(14.8, Severity.Caution)]
    [InlineData(18.8, Severity.Caution)]
    public void Under_70_percent_it_stops_and_under_90_percent_it_may_leave_its_rate(double watts, Severity severity) =>
        Assert.Equal(severity, Assert.Single(Report("flasher,thermal\n", watts).About("flasher")).Severity);

    [Fact]
    public void At_90_percent_nothing_is_said_and_no_resistor_is_asked_for()
    {
        SwapReport report = Report("flasher,thermal\n", 19);
        Assert.Empty(report.About("flasher"));
        Assert.Empty(report.Resistors);
    }

    [Fact]
    public void The_load_on_the_flashers_case_counts_where_it_is_listed()
    {
        SwapReport report = Report("flasher,thermal\nflasher load,10 W\n", 4.6);
        Assert.Equal(0.92, report.Flashers[0].Share.DecimalFractions, 12);
        Assert.Empty(report.About("flasher"));
    }

    [Theory]
    [InlineData("", Severity.Caution, "state 'flasher' in bike.csv")]
    [InlineData("flasher,electronic\n", Severity.Note, "electronic flasher keeps its rate")]
    public void A_flasher_that_is_not_known_to_be_thermal_is_no_fault(string bike, Severity severity, string words)
    {
        Finding finding = Assert.Single(Report(bike, 3).About("flasher"));
        Assert.Equal(severity, finding.Severity);
        Assert.Contains(words, finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bike_without_a_flasher_is_told_nothing()
    {
        SwapReport report = Report("flasher,none\n", 3);
        Assert.Empty(report.About("flasher"));
        Assert.Empty(report.Resistors);
    }

    [Fact]
    public void Circuits_by_another_name_flash_when_the_options_say_so()
    {
        Bike bike = SwapBikes.LampsOnly(
            Lamps.Replace("indicators", "side winkers", StringComparison.Ordinal),
            "flasher,thermal\n"
        );
        Assert.Empty(SwapBikes.Compare(bike, SwapBikes.Replace(("left", SwapBikes.Led(3)))).Flashers);
        Assert.NotEmpty(
            SwapBikes
                .Compare(
                    bike,
                    SwapBikes.Replace(("left", SwapBikes.Led(3))),
                    new CheckOptions { Fuses = new() { FlashingCircuits = ["Side winkers"] } }
                )
                .Flashers
        );
    }

    // The resistor beside each LED: fitted to the bike it brings the current of the filaments back at 13.5 V.
    [Fact]
    public void With_the_resistors_fitted_the_flasher_has_its_old_current_back()
    {
        SwapReport report = Report("flasher,thermal\n", 4);
        LampResistor resistor = report.Resistors.Single(r => r.Lamp.Lamp == "left");
        double amperes =
            report.Flashers[0].CurrentAfter.Amperes + resistor.Lamp.Quantity * 13.5 / resistor.Resistor.Resistance.Ohms;
        Assert.Equal(report.Flashers[0].CurrentBefore.Amperes, amperes, 1e-9);
        Assert.Equal(14.8 * 14.8 / resistor.Resistor.Resistance.Ohms, (double)resistor.HighestHeat.Watts, 1e-9);
        Assert.True((double)resistor.Rating!.Value.Watts >= 2 * (double)resistor.HighestHeat.Watts);
    }
}
