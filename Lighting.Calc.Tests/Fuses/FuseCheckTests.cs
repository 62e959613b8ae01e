using UnitsNet;

namespace Lighting.Calc.Tests.Fuses;

public class FuseCheckTests
{
    [Fact]
    public void An_overloaded_fuse_is_too_small_and_the_smallest_that_carries_the_load_is_named()
    {
        FuseSuitability fuse = FuseBike.Check(FuseBike.Round(fuse: 5)).Single();
        Assert.Equal(FuseVerdict.Overloaded, fuse.Verdict);
        Assert.Contains(
            "5.5 A continuous in the setting 'lights=on' (limit 3.75 A)",
            Assert.Single(fuse.Reasons),
            StringComparison.Ordinal
        );
        Assert.Equal(7.5, fuse.Advice.Smallest!.Value.Amperes);
        Assert.Equal(-1.75, fuse.Steady.Headroom.Amperes, 1e-9);
        Assert.Contains(fuse.Findings, f => f is { Severity: Severity.Fault, Subject: "main" });
    }

    [Fact]
    public void A_fuse_above_what_a_wire_carries_is_too_large_and_names_the_run()
    {
        FuseSuitability fuse = FuseBike.Check(FuseBike.Round(fuse: 20)).Single();
        Assert.Equal(FuseVerdict.TooLargeForTheWire, fuse.Verdict);
        Assert.Contains("('tail feed', 0.75 mm2 is rated 15 A", fuse.Headline, StringComparison.Ordinal);
        Assert.Equal(15, fuse.Advice.Largest!.Value.Amperes);
        Assert.Equal(3, fuse.Protection.DownstreamRuns.Length);
    }

    [Fact]
    public void A_load_that_its_wires_cannot_have_a_fuse_for_names_the_wire_and_the_load_that_would_do()
    {
        Bike bike = FuseBike.Round();
        bike = bike with
        {
            Lamps = bike.Lamps.Add(
                FuseBike.Load("heated grips", LampType.Fixed, 12, 8, "switch out", Bike.BatteryMinus)
            ),
        };
        FuseAdvice advice = FuseBike.Check(bike).Single().Advice;
        Assert.Null(advice.Smallest);
        Assert.Null(advice.Largest);
        Assert.Equal(20, advice.MinimumRatingForLoad!.Value.Amperes);
        Assert.Equal(15, advice.MaximumRatingForWire!.Value.Amperes);
        Assert.Equal(11.25, advice.MaximumContinuousLoad!.Value.Amperes, 1e-9);
        Assert.Equal(
            [
                ("headlamp feed", "1.25 mm2"),
                ("tail feed", "1.25 mm2"),
                ("headlamp earth", "1.25 mm2"),
                ("tail earth", "1.25 mm2"),
            ],
            advice.UpsizedRuns.Select(t => (t.Run.Name, t.Wire!.Name))
        );
        Assert.Contains(
            "reduce the continuous load to 11.2 A; or fit 20 A after 'headlamp feed' of 1 mm2 becomes 1.25 mm2",
            advice.Explanation,
            StringComparison.Ordinal
        );
    }

    // 25 m of 0.75 mm² there and 2 m back: 20 + 3.8 + 4.8 + 25.4 + 10 + 617.5 + 49.4 = 730.9 mΩ, 17.3 A: 115 % of the
    // rating.
    [Fact]
    public void A_run_too_long_for_a_dead_short_to_open_the_fuse_will_not_clear()
    {
        FuseSuitability fuse = FuseBike.Check(FuseBike.Round(tailMetres: 25)).Single();
        Assert.Equal(FuseVerdict.WillNotClear, fuse.Verdict);
        ShortCircuitCheck tail = fuse.Clearing.Single(c => c.Run.Name == "tail feed");
        Assert.Equal(12.65 / 0.7309, tail.ProspectiveCurrent!.Value.Amperes, 1e-6);
        Assert.False(tail.Clears);
        Assert.Null(tail.Opening!.Slowest);
        Assert.All(fuse.Clearing.Where(c => c.Run.Name != "tail feed"), c => Assert.True(c.Clears));
        Assert.Contains("'tail feed' draws 17.31 A", Assert.Single(fuse.Reasons), StringComparison.Ordinal);
        Assert.Equal(10, fuse.Advice.Largest!.Value.Amperes);
    }

    [Fact]
    public void Positive_earth_is_judged_as_its_mirror()
    {
        Bike bike = FuseBike.Round();
        string Swap(string point) =>
            point == Bike.BatteryPlus ? Bike.BatteryMinus
            : point == Bike.BatteryMinus ? Bike.BatteryPlus
            : point;
        Bike mirror = bike with
        {
            Earth = Earth.Positive,
            Runs = [.. bike.Runs.Select(r => r with { From = Swap(r.From), To = Swap(r.To) })],
        };
        FuseSuitability expected = FuseBike.Check(bike).Single(),
            actual = FuseBike.Check(mirror).Single();
        Assert.Equal(expected.Headline, actual.Headline);
        Assert.Equal(
            expected.Clearing.Select(c => c.ProspectiveCurrent!.Value.Amperes),
            actual.Clearing.Select(c => c.ProspectiveCurrent!.Value.Amperes)
        );
    }

    [Fact]
    public void A_fuse_listed_the_wrong_way_round_is_judged_the_same()
    {
        Bike bike = FuseBike.Round();
        FuseSuitability turned = FuseBike
            .Check(bike with { Fuses = [FuseBike.Fuse("main", 15, "fuse out", "fuse in")] })
            .Single();
        Assert.Equal(FuseBike.Check(bike).Single().Headline, turned.Headline);
    }

    [Fact]
    public void Without_runs_the_load_is_judged_and_the_wires_are_said_to_be_unknown()
    {
        var bike = new Bike
        {
            Fuses = [FuseBike.Fuse("main", 10)],
            Lamps =
            [
                FuseBike.Load("headlamp", LampType.Fixed, 12, 4, litWhen: "lights=on"),
                FuseBike.Load("stop", LampType.Fixed, 12, 2, litWhen: "brake=on"),
            ],
        };
        FuseSuitability fuse = FuseBike.Check(bike).Single();
        Assert.Equal(6, fuse.Steady.WorstCurrent.Amperes, 1e-9);
        Assert.Equal(FuseVerdict.Suits, fuse.Verdict);
        Assert.Null(fuse.Protection.Protects);
        Assert.Empty(fuse.Clearing);
        Assert.Equal(7.5, fuse.Advice.Smallest!.Value.Amperes);
        Assert.Null(fuse.Advice.Largest);
        Assert.Contains(
            fuse.Findings,
            f => f.Severity == Severity.Note && f.Message.Contains("wires are not listed", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void The_continuous_load_and_the_peak_are_stated_with_their_limits()
    {
        var bike = new Bike
        {
            Fuses = [FuseBike.Fuse("main", 10)],
            Lamps =
            [
                FuseBike.Load("headlamp", LampType.Fixed, 12, 4, litWhen: "lights=on"),
                FuseBike.Load("stop", LampType.Fixed, 12, 2, litWhen: "brake=on"),
            ],
        };
        FuseSuitability fuse = FuseBike.Check(bike).Single();
        ContinuousLoad steady = fuse.Steady;
        Assert.StartsWith(
            "10 A main: suits — 4 A continuous (lights=on), limit 7.5 A; 6 A at the peak (lights=on; brake=on), limit "
                + "10 A",
            fuse.Headline,
            StringComparison.Ordinal
        );
        Assert.Equal(4, steady.ContinuousCurrent.Amperes, 1e-9);
        Assert.Equal(["stop"], steady.MomentaryLoads);
        FuseSuitability alone = FuseCheck
            .Evaluate(
                bike,
                [FuseBike.Solve(bike).MaxBy(p => p.TotalCurrent.Amperes)!],
                cancellationToken: TestContext.Current.CancellationToken
            )
            .Single();
        Assert.Equal(4, alone.Steady.ContinuousCurrent.Amperes, 1e-9);
    }

    [Fact]
    public void A_duty_never_counts_for_a_fuse()
    {
        var bike = new Bike
        {
            Fuses = [FuseBike.Fuse("main", 10)],
            Lamps = [FuseBike.Load("flasher", LampType.Fixed, 12, 4) with { Duty = Ratio.FromPercent(50) }],
        };
        Assert.Equal(4, FuseBike.Check(bike).Single().Steady.WorstCurrent.Amperes, 1e-9);
    }

    [Fact]
    public void Wires_behind_a_second_fuse_are_that_fuses_to_protect()
    {
        Bike bike = FuseBike.Round(fuse: 20);
        bike = bike with
        {
            Runs = [.. bike.Runs.Select(r => r.Name == "tail feed" ? r with { From = "tail fuse out" } : r)],
            Fuses = bike.Fuses.Add(FuseBike.Fuse("tail", 5, "switch out", "tail fuse out")),
        };
        var fuses = FuseBike.Check(bike);
        Assert.Equal(["feed", "headlamp feed"], fuses[0].Protection.DownstreamRuns.Select(r => r.Run.Name));
        Assert.Equal(["tail feed"], fuses[1].Protection.DownstreamRuns.Select(r => r.Run.Name));
        Assert.Equal(19, fuses[0].Protection.WireCurrent!.Value.Amperes, 1e-9);
        Assert.Equal(FuseVerdict.TooLargeForTheWire, fuses[0].Verdict);
        Assert.Equal(FuseVerdict.Suits, fuses[1].Verdict);
        Assert.Equal(0.5, fuses[1].Steady.WorstCurrent.Amperes, 1e-9);
        Assert.Contains("main", fuses[1].Clearing.Single().Path);
    }

    [Fact]
    public void A_wire_without_a_published_rating_is_never_said_to_suit()
    {
        FuseSuitability fuse = FuseBike.Check(FuseBike.Round(fuse: 7.5, tailWire: "24 AWG")).Single();
        Assert.Equal(FuseVerdict.TooLargeForTheWire, fuse.Verdict);
        Assert.Contains("no rating is published for 24 AWG", fuse.Reasons[0], StringComparison.Ordinal);
        Assert.Null(fuse.Advice.Largest);
        Assert.Null(fuse.Advice.Smallest);
        UpsizedRun thicker = Assert.Single(fuse.Advice.UpsizedRuns);
        Assert.Equal(("tail feed", "18 AWG"), (thicker.Run.Name, thicker.Wire!.Name));
    }

    [Fact]
    public void A_glass_fuse_marked_with_its_blowing_current_counts_half()
    {
        Bike bike = FuseBike.Round() with
        {
            Fuses = [FuseBike.Fuse("main", 15, "fuse in", "fuse out", FuseStyle.Glass)],
        };
        FuseSuitability marked = FuseBike
            .Check(bike, new FuseOptions { GlassMarkedWithBlowingCurrent = true })
            .Single();
        Assert.Equal(7.5, marked.ContinuousRating.Amperes);
        Assert.Equal(5.625, marked.Steady.UsableCurrent.Amperes, 1e-9);
        Assert.Contains(
            marked.Findings,
            f => f.Message.Contains("15 A marked is 7.5 A continuous.", StringComparison.Ordinal)
        );
        Assert.Equal(15, FuseBike.Check(bike).Single().ContinuousRating.Amperes);
    }

    [Fact]
    public void A_blade_is_not_touched_by_the_marking_of_glass() =>
        Assert.Equal(
            15,
            FuseBike
                .Check(FuseBike.Round(), new FuseOptions { GlassMarkedWithBlowingCurrent = true })
                .Single()
                .ContinuousRating.Amperes
        );

    [Fact]
    public void A_fuse_in_the_earth_lead_protects_what_returns_through_it()
    {
        Bike bike = FuseBike.Round();
        bike = bike with
        {
            Runs =
            [
                .. bike.Runs.Select(r =>
                    r.Name switch
                    {
                        "battery lead" => r with { To = "fuse out" },
                        "headlamp earth" or "tail earth" => r with { To = "frame" },
                        _ => r,
                    }
                ),
                FuseBike.Run("earth lead", "earth fuse", Bike.BatteryMinus, "2.5 mm2", 0.5),
            ],
            Fuses = [FuseBike.Fuse("earth", 15, "frame", "earth fuse")],
        };
        FuseSuitability fuse = FuseBike.Check(bike).Single();
        Assert.Equal(FuseVerdict.Suits, fuse.Verdict);
        Assert.Equal(
            ["battery lead", "feed", "headlamp feed", "tail feed"],
            fuse.Protection.DownstreamRuns.Select(r => r.Run.Name)
        );
        // By hand: 20 + 3.8 + 25.4 + 10 + 49.4 + 49.4 + 4.8 + 3.8 = 166.6 mΩ.
        Assert.Equal(166.6, fuse.Clearing.Single(c => c.Run.Name == "tail feed").LoopResistance.Milliohms, 1e-6);
        Assert.Empty(
            FuseBike.Unfused(bike)
        );
    }

    [Fact]
    public void A_fuse_with_a_wire_past_it_protects_nothing_and_says_so()
    {
        Bike bike = FuseBike.Bypassed();
        FuseSuitability fuse = FuseBike.Check(bike).Single();
        Assert.Empty(fuse.Protection.DownstreamRuns);
        Assert.Equal(FuseVerdict.WillNotClear, fuse.Verdict);
        Assert.Equal("will not clear", fuse.VerdictText);
        Assert.Contains(
            fuse.Findings,
            f =>
                f.Severity == Severity.Fault
                && f.Message.Contains("a short draws its current past it", StringComparison.Ordinal)
        );
        Assert.Equal(
            ["battery lead", "feed", "headlamp feed", "tail feed", "old bypass"],
            FuseBike.Unfused(bike).Select(u => u.Run.Name)
        );
    }

    [Fact]
    public void A_run_taken_before_the_fuse_is_named_as_unfused()
    {
        Bike bike = FuseBike.WithHorn("fuse in");
        var findings = UnfusedRuns.Findings(
            bike,
            SettingEnumeration.Of(bike, Condition.Always),
            cancellationToken: TestContext.Current.CancellationToken
        );
        Finding finding = Assert.Single(findings);
        Assert.Equal(
            (Severity.Caution, "battery lead", "horn feed"),
            (finding.Severity, finding.Subject, Assert.Single(finding.Parts))
        );
        Assert.Equal(5.5, FuseBike.Check(bike).Single().Steady.WorstCurrent.Amperes, 1e-9);
    }

    [Fact]
    public void A_battery_lead_that_also_feeds_a_load_in_one_setting_is_not_only_a_lead()
    {
        Bike bike = FuseBike.Round();
        bike = bike with
        {
            Lamps = bike.Lamps.Add(FuseBike.Load("horn", LampType.Fixed, 12, 3, "horn +", Bike.BatteryMinus)),
            Switches = bike.Switches.Add(FuseBike.Contact("horn", "fuse in", "horn +", "on")),
        };
        UnfusedRun lead = Assert.Single(
            FuseBike.Unfused(bike)
        );
        Assert.False(lead.IsBatteryLead);
        Assert.Equal("on", lead.Setting.PositionOf("horn"));
    }

    [Fact]
    public void What_lies_behind_the_earth_terminal_is_not_fed()
    {
        Bike bike = FuseBike.Round();
        bike = bike with
        {
            Runs =
            [
                .. bike.Runs.Select(r => r.Name is "headlamp earth" or "tail earth" ? r with { To = "frame" } : r),
                FuseBike.Run("frame strap", "frame", Bike.BatteryMinus, "2.5 mm2", 0.5),
                FuseBike.Run("heating wire", "switch out", Bike.BatteryMinus, "0.5 mm2", 100),
            ],
        };
        Assert.Equal(
            ["feed", "headlamp feed", "tail feed"],
            FuseBike.Check(bike).Single().Protection.DownstreamRuns.Select(r => r.Run.Name)
        );
    }

    [Fact]
    public void A_return_too_thin_for_its_load_is_a_fault()
    {
        Bike bike = FuseBike.Round();
        bike = bike with
        {
            Runs =
            [
                .. bike.Runs.Select(r =>
                    r.Name == "headlamp earth" ? r with { Wire = FuseBike.Wire("0.35 mm2"), Bundle = 7 } : r
                ),
            ],
        };
        Finding finding = FuseBike.Check(bike).Single().Findings.Single(f => f.Subject == "headlamp earth");
        Assert.Equal(Severity.Fault, finding.Severity);
        // 9 A × 0.54 for seven loaded together.
        Assert.Contains(
            "Carries 5 A in the setting 'lights=on', more than its rating of 4.86 A",
            finding.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_run_fed_through_two_fuses_is_cautioned()
    {
        Bike bike = FuseBike.Round() with
        {
            Fuses =
            [
                FuseBike.Fuse("main", 10, "fuse in", "fuse out"),
                FuseBike.Fuse("spare", 5, "fuse in", "fuse out"),
            ],
        };
        Assert.Contains(
            FuseBike.Check(bike)[0].Findings,
            f => f.Message.Contains("'feed' is fed through 'spare' too", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_short_that_nothing_in_the_lists_limits_has_no_current_and_clears()
    {
        Bike bike = FuseBike.Round() with
        {
            BatteryResistance = ElectricResistance.Zero,
            Fuses = [FuseBike.Fuse("main", 10, Bike.BatteryPlus, "fuse out", FuseStyle.Glass)],
        };
        bike = bike with
        {
            Runs = [.. bike.Runs.Skip(1).Select(r => r with { Length = Length.Zero, Joints = 0 })],
            Switches = [FuseBike.Contact("lights", "switch in", "switch out", "on")],
        };
        ShortCircuitCheck clearing = FuseBike.Check(bike).Single().Clearing[0];
        Assert.Null(clearing.ProspectiveCurrent);
        Assert.Null(clearing.Opening);
        Assert.True(clearing.Clears);
    }

    [Fact]
    public void Hot_air_lowers_what_a_fuse_and_a_wire_carry()
    {
        FuseSuitability hot = FuseBike
            .Check(
                FuseBike.Round(),
                new FuseOptions
                {
                    Ambient = Temperature.FromDegreesCelsius(65),
                    WireAmbient = Temperature.FromDegreesCelsius(50),
                }
            )
            .Single();
        Assert.Equal(11.25 * (1 - 0.0047 * 42) / (1 - 0.0047 * 2), hot.Steady.UsableCurrent.Amperes, 1e-9);
        Assert.Equal(15 * Math.Sqrt(0.5), hot.Protection.WireCurrent!.Value.Amperes, 1e-9);
        Assert.Equal(FuseVerdict.TooLargeForTheWire, hot.Verdict);
    }

    [Fact]
    public void A_limit_on_the_length_of_a_short_is_kept() =>
        Assert.Equal(
            FuseVerdict.WillNotClear,
            FuseBike
                .Check(FuseBike.Round(), new FuseOptions { LongestShort = Duration.FromMilliseconds(100) })
                .Single()
                .Verdict
        );

    [Fact]
    public void Points_of_another_bike_or_none_are_refused()
    {
        Assert.Throws<ArgumentException>(() =>
            FuseCheck.Evaluate(FuseBike.Round(), [], cancellationToken: TestContext.Current.CancellationToken)
        );
        Assert.Throws<ArgumentException>(() =>
            FuseCheck.Evaluate(
                FuseBike.Round() with
                {
                    Fuses = [],
                },
                FuseBike.Solve(FuseBike.Round()),
                cancellationToken: TestContext.Current.CancellationToken
            )
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            FuseBike.Check(FuseBike.Round(), new FuseOptions { ContinuousLoadFactor = Ratio.FromPercent(101) })
        );
    }
}
