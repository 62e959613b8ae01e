namespace Lighting.Calc.Tests.Swaps;

/// <summary>One indicator lamp between the two sides: dark filaments, glowing LEDs, and the pair of diodes.</summary>
public class SharedTellTaleTests
{
    [Fact]
    public void With_filaments_the_bike_suits_and_the_far_side_stays_dark()
    {
        BikeReport report = SwapBikes.Check(SwapBikes.SharedTellTale());
        Assert.NotEqual(BikeVerdict.DoesNotSuit, report.Verdict);
        OperatingPoint left = report.Settings.Single(s => s.Setting.PositionOf("turn") == "left");
        Assert.InRange(Math.Abs(left.Lamps[1].Voltage.Volts), 0.001, 0.3);
        Assert.Contains(
            report.Findings,
            f =>
                f.Severity == Severity.Note
                && f.Subject == "tell-tale"
                && f.Message.Contains("through another lamp", StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void LEDs_on_the_far_side_glow_through_a_filament_tell_tale(bool positiveEarth)
    {
        Bike bike = positiveEarth ? SwapBikes.SharedTellTaleOnPositiveEarth() : SwapBikes.SharedTellTale();
        SwapReport report = SwapBikes.Compare(
            bike,
            SwapBikes.Replace(("left lamps", SwapBikes.Led(3)), ("right lamps", SwapBikes.Led(3)))
        );
        SneakFeed sneak = Assert.Single(report.SneakFeeds, s => s.Glowing.Lamp.Lamp == "right lamps");
        Assert.Equal("left", sneak.Setting.PositionOf("turn"));
        Assert.Equal("tell-tale", sneak.Through!.Lamp.Lamp);
        Assert.True(sneak.DiodesCure);
        Finding finding = Assert.Single(report.About("right lamps"), f => f.Kind == FindingKind.SneakFeedThroughLamp);
        Assert.Equal(Severity.Fault, finding.Severity);
        Assert.Contains(
            "through 'tell-tale', which is connected between 'left line' and 'right line'",
            finding.Message,
            StringComparison.Ordinal
        );
        Assert.Equal(BikeVerdict.DoesNotSuit, report.Verdict);
    }

    [Fact]
    public void Lamps_that_were_lit_before_are_no_sneak_feed_though_the_lists_do_not_say_when_they_are_lit()
    {
        Bike bike = SwapBikes.SharedTellTale();
        bike = bike with { Lamps = [.. bike.Lamps.Select(l => l with { LitWhen = Condition.Always })] };
        SwapReport report = SwapBikes.Compare(
            bike,
            SwapBikes.Replace(("left lamps", SwapBikes.Led(3)), ("right lamps", SwapBikes.Led(3)))
        );
        Assert.Equal(
            [("left lamps", "right"), ("right lamps", "left")],
            report.SneakFeeds.Select(s => (s.Glowing.Lamp.Lamp, s.Setting.PositionOf("turn")!))
        );
    }

    // By hand: below its minimum volts a pair of 3 W drivers is 9²/6 = 13.5 Ω. The 12 V 2 W tell-tale carries
    // I = (2/12)·(Vt/12)^0.55 with Vt = 14 − 13.5·I: I = 0.1647 A gives Vt = 11.777 V and (2/12)·(11.777/12)^0.55 =
    // 0.16495 A; so 0.165 A and 2.22 V on the far side. The battery and the thick wires are left out of the hand
    // calculation.
    [Fact]
    public void The_far_side_gets_the_volts_of_a_hand_calculation()
    {
        SwapReport report = SwapBikes.Compare(
            SwapBikes.SharedTellTale(),
            SwapBikes.Replace(("left lamps", SwapBikes.Led(3)), ("right lamps", SwapBikes.Led(3)))
        );
        LampState glowing = report.SneakFeeds.Single(s => s.Glowing.Lamp.Lamp == "right lamps").Glowing;
        Assert.Equal(0.165, glowing.Current.Amperes, 0.001);
        Assert.Equal(2.22, glowing.Voltage.Volts, 0.02);
    }

    [Fact]
    public void An_LED_tell_tale_between_the_sides_is_dark_on_one_of_them()
    {
        SwapReport report = SwapBikes.Compare(
            SwapBikes.SharedTellTale(),
            SwapBikes.Replace(("tell-tale", SwapBikes.Class("LED small bayonet")))
        );
        // The check of the swapped bike finds it dark as well: one cause, one finding.
        Assert.Contains(
            report.After.Findings,
            f =>
                f.Subject == "tell-tale"
                && f.Message
                    == "'lit when' says lit in the setting 'turn=right', but the wiring leaves it dark: 13.94 V across "
                        + "it, the wrong way round."
        );
        Finding finding = Assert.Single(report.About("tell-tale"), f => f.Severity == Severity.Fault);
        Assert.Contains("'turn=right'", finding.Message, StringComparison.Ordinal);
        Assert.Contains("wrong way round", finding.Message, StringComparison.Ordinal);
        Assert.Contains("two diodes", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Separate_tell_tales_leave_no_feed_to_the_other_side()
    {
        Bike bike = SwapBikes.SharedTellTale();
        bike = bike with
        {
            Lamps = bike.Lamps.SetItem(
                2,
                bike.Lamps[2] with
                {
                    Return = "frame",
                    LitWhen = Condition.Parse("turn=left"),
                }
            ),
        };
        SwapReport report = SwapBikes.Compare(
            bike,
            SwapBikes.Replace(("left lamps", SwapBikes.Led(3)), ("right lamps", SwapBikes.Led(3)))
        );
        Assert.Empty(report.SneakFeeds);
    }

    [Theory]
    [InlineData("left")]
    [InlineData("right")]
    public void With_the_pair_of_diodes_the_tell_tale_is_lit_by_either_side_and_only_that_side_is_lit(string side)
    {
        Bike bike = Swap.Apply(
            SwapBikes.SharedTellTale(),
            SwapBikes.Replace(
                ("left lamps", SwapBikes.Led(3)),
                ("right lamps", SwapBikes.Led(3)),
                ("tell-tale", SwapBikes.Class("LED small bayonet"))
            )
        );
        Bike cured = DiodePair.Fit(bike, bike.Lamps[2]);
        HarnessSolver solver = new HarnessNetwork(cured).CreateSolver();
        OperatingPoint point = solver.Solve(SettingEnumeration.Held(cured, Condition.Parse($"turn={side}")));
        int lit = side == "left" ? 0 : 1;
        Assert.True(point.Lamps[lit].RelativeLight!.Value.DecimalFractions > 0.99);
        Assert.True(point.Lamps[1 - lit].RelativeLight!.Value.DecimalFractions < 1e-4);
        Assert.True(point.Lamps[2].RelativeLight!.Value.DecimalFractions > 0.8);
        Assert.Equal(13.2, point.Lamps[2].Voltage.Volts, 0.2);
    }
}
