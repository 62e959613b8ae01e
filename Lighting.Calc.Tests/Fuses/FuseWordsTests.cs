using UnitsNet;

namespace Lighting.Calc.Tests.Fuses;

/// <summary>What a rider reads of a fuse, whole sentences; the numbers of the round bike by hand as in
/// <see cref="FuseVerdictByHandTests"/>.</summary>
public class FuseWordsTests
{
    // 0.75 mm² of ordinary PVC cable is rated 6.56 A.
    private const string NotStated =
        " (kind of cable not stated, taken as in free air; if ordinary PVC: none suits)";

    [Fact]
    public void A_fuse_that_suits()
    {
        FuseSuitability fuse = FuseBike.Check(FuseBike.Round()).Single();
        Assert.Equal(
            "15 A main: suits — 5.5 A continuous (lights=on), limit 11.25 A; 5.5 A at the peak, limit 15 A; its "
                + "weakest wire 'tail feed' is rated 15 A",
            fuse.Headline
        );
        Assert.Equal("fit 7.5 A to 15 A" + NotStated, fuse.Advice.Explanation);
        Assert.Equal("suits", fuse.VerdictText);
        Assert.Equal(FindingKind.CableKindNeeded, Assert.Single(fuse.Findings).Kind);
    }

    [Fact]
    public void A_fuse_that_is_too_small() =>
        Assert.Equal(
            "5 A main: overloaded — overloaded: 5.5 A continuous in the setting 'lights=on' (limit 3.75 A); fit 7.5 A "
                + "to 15 A"
                + NotStated,
            FuseBike.Check(FuseBike.Round(fuse: 5)).Single().Headline
        );

    [Fact]
    public void A_fuse_that_is_too_large_for_two_wires_names_the_weaker_first()
    {
        FuseSuitability fuse = FuseBike.Check(FuseBike.Round(fuse: 20)).Single();
        Assert.Equal(
            "Too large for the wiring: it is rated 20 A, the smallest wire 15 A ('tail feed', 0.75 mm2 is rated 15 A "
                + "in free air at 30 °C with 70 °C insulation, × 1.00 for an ambient of 30 °C × 1.00 for a bundle of "
                + "1). "
                + "Wires rated below it: 'headlamp feed', 'tail feed', 'headlamp earth', 'tail earth'.",
            Assert.Single(fuse.Reasons)
        );
        Assert.Equal(
            $"20 A main: too large for the wire — t{fuse.Reasons[0][1..^1]}; fit 7.5 A to 15 A"
                + NotStated,
            fuse.Headline
        );
        Assert.Equal(
            fuse.Reasons,
            fuse.Findings.Where(f => f is { Severity: Severity.Fault, Subject: "main" }).Select(f => f.Message)
        );
        Assert.Equal(
            "the run 'tail feed' limits it: 0.75 mm2 is rated 15 A in free air at 30 °C with 70 °C insulation, × 1.00 "
                + "for an ambient of 30 °C × 1.00 for a bundle of 1",
            fuse.Protection.Explanation
        );
        Assert.False(fuse.Protection.Protects);
    }

    // 17.31 A of 15 A is 115 %. Between 110 % (100 h) and 135 % (0.75 s) the share of logarithms is 0.2334: 4.7 h.
    [Fact]
    public void A_fuse_that_a_far_short_does_not_open()
    {
        FuseSuitability fuse = FuseBike.Check(FuseBike.Round(tailMetres: 25)).Single();
        Assert.Equal(
            "Does not clear a dead short at the end of 'tail feed': 'tail feed' draws 17.31 A: 115 % of the rating "
                + "lies below the first gate by which it must open (135 %): "
                + "it may carry this without end, and holds at least 4.7 h.",
            Assert.Single(fuse.Reasons)
        );
        Assert.Equal(
            $"15 A main: will not clear — d{fuse.Reasons[0][1..^1]}; fit 7.5 A to 10 A{NotStated}",
            fuse.Headline
        );
    }

    // 60 m: 20 + 3.8 + 25.4 + 10 + 1482 + 49.4 = 1590.6 mΩ. With a 3 A fuse's 31.1 mΩ 7.8 A, 260 %; with 5 A 7.86 A,
    // 157 %: within the wire's overload; with 7.5 A 105 %: never.
    [Fact]
    public void Where_only_a_short_stands_against_it_resistance_must_go()
    {
        FuseAdvice advice = FuseBike.Check(FuseBike.Round(tailMetres: 60)).Single().Advice;
        Assert.Equal(
            "the load needs 7.5 A, a dead short is cleared by 5 A at most: reduce the continuous load to 3.7 A and "
                + "fit 5 A; or take resistance out of the way to the short: larger or shorter wires, better joints; or "
                + "split the circuit over two fuses",
            advice.Explanation
        );
        Assert.Equal(5, advice.MaximumRatingForWire!.Value.Amperes);
        Assert.Null(advice.Largest);
        Assert.Null(advice.Smallest);
        Assert.Empty(advice.UpsizedRuns);
    }

    [Fact]
    public void Where_wires_stand_against_it_each_is_told_with_the_size_that_would_do()
    {
        Bike bike = FuseBike.Round();
        bike = bike with
        {
            Lamps = bike.Lamps.Add(
                FuseBike.Load("heated grips", LampType.Fixed, 12, 8, "switch out", Bike.BatteryMinus)
            ),
        };
        Assert.Equal(
            "the load needs 20 A, the wires allow 15 A at most: reduce the continuous load to 11.2 A; or fit 20 A "
                + "after "
                + "'headlamp feed' of 1 mm2 becomes 1.25 mm2, 'tail feed' of 0.75 mm2 becomes 1.25 mm2, 'headlamp "
                + "earth' of 1 mm2 becomes 1.25 mm2, 'tail earth' of 0.75 mm2 becomes 1.25 mm2; or split the circuit "
                + "over two fuses",
            FuseBike.Check(bike).Single().Advice.Explanation
        );
    }

    [Fact]
    public void A_wire_without_a_rating_is_told_with_the_first_size_that_has_one()
    {
        FuseSuitability fuse = FuseBike.Check(FuseBike.Round(fuse: 7.5, tailWire: "24 AWG")).Single();
        Assert.Equal(
            "Not shown to protect 'tail feed': no rating is published for 24 AWG or any smaller wire.",
            fuse.Reasons[0]
        );
        Assert.Equal(
            "the load needs 7.5 A, and no standard blade fuse both protects every wire and clears every dead short: "
                + "fit 7.5 A after 'tail feed' of 24 AWG becomes 18 AWG; or split the circuit over two fuses",
            fuse.Advice.Explanation
        );
        Assert.Null(fuse.Advice.MaximumContinuousLoad);
    }

    // In air as hot as the insulation may become no wire is rated for anything.
    [Fact]
    public void Where_no_size_would_do_that_is_said()
    {
        Bike bike = FuseBike.Round();
        FuseAdvice advice = FuseBike
            .Check(bike, new FuseOptions { WireAmbient = Temperature.FromDegreesCelsius(70) })
            .Single()
            .Advice;
        Assert.Contains(
            "'tail feed' of 0.75 mm2 becomes larger than any listed size of its kind",
            advice.Explanation,
            StringComparison.Ordinal
        );
        Assert.All(advice.UpsizedRuns, r => Assert.Null(r.Wire));
    }

    // No factor is printed for 19 wires together, whatever their size.
    [Fact]
    public void A_bundle_without_a_published_factor_is_cautioned()
    {
        Bike bike = FuseBike.Round();
        bike = bike with { Runs = [.. bike.Runs.Select(r => r.Name == "tail feed" ? r with { Bundle = 19 } : r)] };
        Finding caution = FuseBike
            .Check(bike)
            .Single()
            .Findings.Single(f => f.Kind == FindingKind.WiresUnratedBehindFuse);
        Assert.Equal((Severity.Caution, "tail feed"), (caution.Severity, Assert.Single(caution.Parts)));
    }

    [Fact]
    public void Advice_for_glass_that_is_marked_with_what_blows_it_says_how_to_read_it()
    {
        Bike bike = FuseBike.Round() with
        {
            Fuses = [FuseBike.Fuse("main", 15, "fuse in", "fuse out", FuseStyle.Glass)],
        };
        FuseSuitability fuse = FuseBike.Check(bike, new FuseOptions { GlassMarkedWithBlowingCurrent = true }).Single();
        // 5.5 A is 75 % of 7.33 A, the next that is made 7.5 A, marked 15 A; the wires carry 15 A, the next below that
        // is made 12.5 A, marked 25 A.
        Assert.Equal(
            "fit 15 A to 25 A (fuses as marked, with the current at which they blow)" + NotStated,
            fuse.Advice.Explanation
        );
        Assert.Equal(
            [
                "Marked with its blowing current: 15 A marked is 7.5 A continuous.",
                "Its resistance is neither listed nor published; the short-circuit current is calculated without it.",
            ],
            fuse.Findings.Where(f => f is { Severity: Severity.Note, Subject: "main" }).Select(f => f.Message)
        );
    }

    // Nothing within 5 s is published for glass: no time is stated, and what would show it is.
    [Theory]
    [InlineData(15)]
    [InlineData(7.5)]
    public void A_dead_short_behind_glass_is_not_shown_to_be_cleared(double amperes)
    {
        FuseSuitability fuse = FuseBike
            .Check(
                FuseBike.Round() with
                {
                    Fuses = [FuseBike.Fuse("main", amperes, "fuse in", "fuse out", FuseStyle.Glass)],
                }
            )
            .Single();
        Finding caution = fuse.Findings.Single(f => f.Kind == FindingKind.ShortNotShownToClear);
        Assert.Equal((Severity.Caution, FuseVerdict.Suits), (caution.Severity, fuse.Verdict));
        Assert.Equal(["feed", "headlamp feed", "tail feed"], caution.Parts);
        Assert.Contains(
            "a blade fuse, whose times are published, or a larger wire would show it",
            caution.Message,
            StringComparison.Ordinal
        );
        Assert.All(fuse.Clearing, c => Assert.Null(c.Clears));
    }

    [Fact]
    public void A_resistance_that_is_listed_is_not_said_to_be_unknown()
    {
        Fuse glass = FuseBike.Fuse("main", 10, "fuse in", "fuse out", FuseStyle.Glass);
        Bike bike = FuseBike.Round() with { Fuses = [glass with { Resistance = ElectricResistance.FromMilliohms(8) }] };
        Assert.DoesNotContain(FuseBike.Check(bike).Single().Findings, f => f.Kind == FindingKind.FuseResistanceUnknown);
        Assert.Contains(
            FuseBike.Check(bike with { Fuses = [glass] }).Single().Findings,
            f => f.Kind == FindingKind.FuseResistanceUnknown
        );
        // A blade of 35 A is made, but its resistance is not printed.
        Assert.Contains(
            FuseBike.Check(FuseBike.Round(fuse: 35)).Single().Findings,
            f => f.Kind == FindingKind.FuseResistanceUnknown
        );
    }

    [Fact]
    public void A_fuse_that_no_setting_joins_to_the_battery_is_not_judged_and_says_so()
    {
        Bike bike = FuseBike.Round();
        bike = bike with { Fuses = bike.Fuses.Add(FuseBike.Fuse("loose", 10, "nowhere", "nothing")) };
        FuseSuitability loose = FuseBike.Check(bike)[1];
        Assert.Equal(
            [
                (Severity.Caution, "No setting joins it to the battery: its load and its wires are not judged."),
                (Severity.Note, "Carries no current in any of these settings."),
            ],
            loose.Findings.Select(f => (f.Severity, f.Message))
        );
        Assert.Equal("it feeds no run in any of these settings", loose.Protection.Explanation);
        // Nothing flows: the smallest of all carries that.
        Assert.Equal(
            "the load needs at least 1 A; how large it may be depends on the wires, and it feeds none in these "
                + "settings",
            loose.Advice.Explanation
        );
        Assert.Null(loose.InrushCheck);
        Assert.Equal("10 A loose: not judged — no setting joins it to the battery", loose.Headline);
    }

    [Fact]
    public void A_limit_over_eighty_percent_is_cautioned_where_the_fuse_suits_by_it()
    {
        Assert.Equal("Judged at 80.5 % of its rating; 75 % is usual.", Judged(80.5).Findings[^1].Message);
        Assert.Equal(Severity.Caution, Judged(80.5).Findings[^1].Severity);
        Assert.Single(Judged(80).Findings);
        Assert.DoesNotContain(
            FuseBike
                .Check(FuseBike.Round(fuse: 5), new FuseOptions { ContinuousLoadFactor = Ratio.FromPercent(100) })
                .Single()
                .Findings,
            f => f.Message.StartsWith("Judged at", StringComparison.Ordinal)
        );

        static FuseSuitability Judged(double percent) =>
            FuseBike
                .Check(FuseBike.Round(), new FuseOptions { ContinuousLoadFactor = Ratio.FromPercent(percent) })
                .Single();
    }

    [Fact]
    public void A_short_whose_way_back_no_lamp_tells_is_named()
    {
        Bike bike = FuseBike.Round();
        bike = bike with
        {
            Runs = bike
                .Runs.Add(FuseBike.Run("spare feed", "switch out", "spare plug", "1 mm2", 1))
                .Add(FuseBike.Run("old feed", "switch out", "old plug", "1 mm2", 1)),
        };
        FuseSuitability fuse = FuseBike.Check(bike).Single();
        Finding finding = fuse.Findings[^1];
        Assert.Equal(
            (
                Severity.Note,
                "The return path of a short on 'spare feed', 'old feed' is not defined by any lamp; the frame is taken "
                    + "as 0 Ω."
            ),
            (finding.Severity, finding.Message)
        );
        // By hand: 20 + 3.8 + 4.8 + 25.4 + 10 + 18.5 = 82.5 mΩ, nothing on the way back.
        ShortCircuitCheck spare = fuse.Clearing.Single(c => c.Run.Name == "spare feed");
        Assert.Null(spare.ReturnFrom);
        Assert.Equal(82.5, spare.LoopResistance.Milliohms, 1e-6);
        Assert.Equal("tail -", fuse.Clearing.Single(c => c.Run.Name == "tail feed").ReturnFrom);
    }

    [Fact]
    public void A_return_without_a_rating_is_not_shown_to_be_protected()
    {
        Bike bike = FuseBike.Round();
        bike = bike with
        {
            Runs = [.. bike.Runs.Select(r => r.Name == "tail earth" ? r with { Wire = FuseBike.Wire("24 AWG") } : r)],
        };
        Assert.Equal(
            "Not shown to protect 'tail earth': no rating is published for 24 AWG or any smaller wire.",
            FuseBike.Check(bike).Single().Reasons[0]
        );
    }

    // 0.35 mm² carries 9 A: the fault is told of the run, with the setting.
    [Fact]
    public void A_fed_run_that_carries_more_than_it_can_is_a_fault_of_its_own()
    {
        Bike bike = FuseBike.Round(fuse: 20);
        bike = bike with
        {
            Runs =
            [
                .. bike.Runs.Select(r => r.Name == "headlamp feed" ? r with { Wire = FuseBike.Wire("0.35 mm2") } : r),
            ],
            Lamps =
            [
                .. bike.Lamps.Select(l =>
                    l.Lamp == "headlamp" ? FuseBike.Load("headlamp", LampType.Fixed, 12, 10, l.Feed, l.Return) : l
                ),
            ],
        };
        Assert.Contains(
            FuseBike.Check(bike).Single().Findings,
            f =>
                f is { Severity: Severity.Fault, Subject: "headlamp feed" }
                && f.Message.StartsWith(
                    "Carries 10 A in the setting 'lights=on', more than its rating of 9 A: 0.35 mm2 is rated 9 A",
                    StringComparison.Ordinal
                )
        );
    }

    [Fact]
    public void A_run_behind_two_fuses_is_told_once_by_the_first()
    {
        Bike bike = FuseBike.Round() with
        {
            Fuses =
            [
                FuseBike.Fuse("main", 10, "fuse in", "fuse out"),
                FuseBike.Fuse("spare", 5, "fuse in", "fuse out"),
            ],
        };
        var fuses = FuseBike.Check(bike);
        Assert.Equal(
            ["feed", "headlamp feed", "tail feed"],
            fuses[0].Findings.Where(f => f.Kind == FindingKind.RunFedByTwoFuses).Select(f => f.Message.Split('\'')[1])
        );
        Assert.Equal(
            "'feed' is fed through 'spare' too: a fault in it may draw what both fuses pass together.",
            fuses[0].Findings.First(f => f.Kind == FindingKind.RunFedByTwoFuses).Message
        );
        Assert.DoesNotContain(fuses[1].Findings, f => f.Kind == FindingKind.RunFedByTwoFuses);
    }

    [Fact]
    public void An_unfused_run_is_told_by_what_it_is()
    {
        Bike bike = FuseBike.Round();
        Finding lead = Assert.Single(
            UnfusedRuns.Findings(
                bike,
                SettingEnumeration.Of(bike, Condition.Always),
                TestContext.Current.CancellationToken
            )
        );
        Assert.Equal(
            (
                Severity.Note,
                "battery lead",
                "Unfused: battery to first fuse. Keep it short, support it clear of the frame, and mount the fuse as "
                    + "close to the battery as practicable."
            ),
            (lead.Severity, lead.Subject, lead.Message)
        );
        bike = bike with
        {
            Runs = bike.Runs.Add(FuseBike.Run("radio feed", "fuse in", "radio +", "1 mm2", 1)),
            Lamps = bike.Lamps.Add(FuseBike.Load("radio", LampType.Fixed, 12, 1, "radio +", Bike.BatteryMinus)),
        };
        Finding both = Assert.Single(
            UnfusedRuns.Findings(
                bike,
                SettingEnumeration.Of(bike, Condition.Always),
                TestContext.Current.CancellationToken
            )
        );
        Assert.Equal(
            (Severity.Caution, "battery lead", FindingKind.RunUnfused),
            (both.Severity, both.Subject, both.Kind)
        );
        Assert.Equal(["radio feed"], both.Parts);
    }

    [Theory]
    [InlineData(0.05, "50 ms")]
    [InlineData(0.0999, "99.9 ms")]
    [InlineData(0.1, "0.1 s")]
    [InlineData(119.99, "119.99 s")]
    [InlineData(120, "2 min")]
    [InlineData(7199, "120 min")]
    [InlineData(7200, "2 h")]
    [InlineData(360000, "100 h")]
    public void A_time_is_told_in_the_unit_that_suits_it(double seconds, string text) =>
        Assert.Equal(text, OpeningTime.Text(seconds));

    // On the gates as printed, and by the last gate's energy above it: 0.1 s × (6/7.5)² = 64 ms.
    [Theory]
    [InlineData(FuseStyle.Blade, 100, "carries 100 % of the rating")]
    [InlineData(
        FuseStyle.Blade,
        105,
        "105 % of the rating lies below the first gate by which it must open (135 %): it may carry this without end, "
            + "and holds at least 100 h"
    )]
    [InlineData(FuseStyle.Blade, 200, "opens at 200 % of the rating in 0.15 s to 5 s")]
    [InlineData(
        FuseStyle.Blade,
        750,
        "750 % of the rating lies above the last gate (600 %): opens within 64 ms by that gate's energy; how fast is "
            + "not published"
    )]
    [InlineData(FuseStyle.Glass, 100, "carries 100 % of the rating")]
    [InlineData(
        FuseStyle.Glass,
        120,
        "120 % of the rating lies below the first gate by which it must open (135 %): it may carry this without end"
    )]
    [InlineData(FuseStyle.Glass, 200, "opens at 200 % of the rating within 2 min (how fast is not published)")]
    public void An_opening_time_in_words(FuseStyle style, double percent, string words) =>
        Assert.Equal(
            words,
            OpeningTime
                .Calculate(style, ElectricCurrent.FromAmperes(10), ElectricCurrent.FromAmperes(percent / 10))
                .Explanation
        );
}
