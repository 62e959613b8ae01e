using UnitsNet;

namespace Lighting.Calc.Tests.Fuses;

/// <summary>What counts as fed by a fuse, however the lists are written, and verdicts at the very limit.</summary>
public class FuseScopeTests
{
    [Fact]
    public void Runs_listed_the_wrong_way_round_are_judged_the_same()
    {
        foreach (
            Bike bike in new[]
            {
                FuseBike.Round(),
                FuseBike.Round(tailMetres: 25),
                EarthFused(),
                FuseBike.WithHorn("fuse in"),
            }
        )
        {
            Bike turned = bike with { Runs = [.. bike.Runs.Select(r => r with { From = r.To, To = r.From })] };
            FuseSuitability expected = FuseBike.Check(bike).Single(),
                actual = FuseBike.Check(turned).Single();
            Assert.Equal(expected.Headline, actual.Headline);
            Assert.Equal(
                expected.Clearing.Select(c => (c.FarEnd, c.ReturnFrom, c.LoopResistance.Milliohms)),
                actual.Clearing.Select(c => (c.FarEnd, c.ReturnFrom, c.LoopResistance.Milliohms))
            );
            Assert.Equal(expected.Clearing.SelectMany(c => c.Path), actual.Clearing.SelectMany(c => c.Path));
            Assert.Equal(
                expected.Protection.ReturnRuns.Select(r => r.Run.Name),
                actual.Protection.ReturnRuns.Select(r => r.Run.Name)
            );
            Assert.Equal(Unfused(bike), Unfused(turned));
        }
    }

    // A bulb does not care which of its wires is listed as the feed.
    [Fact]
    public void A_lamp_listed_the_wrong_way_round_is_judged_the_same()
    {
        Bike bike = FuseBike.Round();
        bike = bike with
        {
            Lamps =
            [
                .. bike.Lamps.Select(l =>
                    FuseBike.Load(
                        l.Lamp,
                        LampType.Filament,
                        12,
                        l.Specification.ReferenceCurrent.Amperes,
                        l.Feed,
                        l.Return
                    )
                ),
            ],
        };
        Bike turned = bike with { Lamps = [.. bike.Lamps.Select(l => l with { Feed = l.Return, Return = l.Feed })] };
        FuseSuitability expected = FuseBike.Check(bike).Single(),
            actual = FuseBike.Check(turned).Single();
        Assert.Equal(["headlamp earth", "tail earth"], actual.Protection.ReturnRuns.Select(r => r.Run.Name));
        Assert.Equal(
            expected.Clearing.Select(c => (c.FarEnd, c.ReturnFrom)),
            actual.Clearing.Select(c => (c.FarEnd, c.ReturnFrom))
        );
        Assert.Equal(expected.InrushCheck!.Peak.Amperes, actual.InrushCheck!.Peak.Amperes, 1e-6);
    }

    [Fact]
    public void A_short_behind_a_fuse_in_the_earth_lead_passes_it_last()
    {
        Bike bike = EarthFused();
        FuseSuitability fuse = FuseBike.Check(bike).Single();
        Assert.Equal(
            ["battery lead", "feed", "lights (switch in to switch out)", "tail feed", "earth"],
            fuse.Clearing.Single(c => c.Run.Name == "tail feed").Path
        );
        Assert.Equal("tail -", fuse.Clearing.Single(c => c.Run.Name == "feed").ReturnFrom ?? "none");
        bike = bike with
        {
            Lamps = bike.Lamps.SetItem(1, FuseBike.Load("tail", LampType.Filament, 13.5, 0.5, "tail +", "frame")),
        };
        // Cold 13.5/0.5/15 = 1.8 Ω: some 7 A beside the headlamp's 5.
        Assert.InRange(FuseBike.Check(bike).Single().InrushCheck!.Peak.Amperes, 10, 13);
        Assert.Empty(FuseBike.Check(bike).Single().Protection.ReturnRuns);
    }

    [Fact]
    public void A_fuse_in_the_earth_lead_listed_the_wrong_way_round_is_judged_the_same()
    {
        Bike bike = EarthFused(),
            turned = bike with { Fuses = [FuseBike.Fuse("earth", 15, "earth fuse", "frame")] };
        Assert.Equal(FuseBike.Check(bike).Single().Headline, FuseBike.Check(turned).Single().Headline);
        Bike lit = turned with
        {
            Lamps = turned.Lamps.SetItem(1, FuseBike.Load("tail", LampType.Filament, 13.5, 0.5, "tail +", "frame")),
        };
        Assert.InRange(FuseBike.Check(lit).Single().InrushCheck!.Peak.Amperes, 10, 13);
    }

    [Fact]
    public void The_surge_of_lamps_behind_a_second_fuse_passes_the_first_as_well()
    {
        Bike bike = FuseBike.Round();
        bike = bike with
        {
            Runs = [.. bike.Runs.Select(r => r.Name == "tail feed" ? r with { From = "tail fuse out" } : r)],
            Fuses = bike.Fuses.Add(FuseBike.Fuse("tail", 5, "switch out", "tail fuse out")),
            Lamps = bike.Lamps.SetItem(1, FuseBike.Load("tail", LampType.Filament, 13.5, 1, "tail +", "tail -")),
        };
        var fuses = FuseBike.Check(bike);
        // 0.9 Ω cold behind the 0.5 Ω that cost the lamp 0.5 V at its 1 A while the headlamp's 5 A share the feed: 13.5
        // V over 1.4 Ω.
        Assert.InRange(fuses[1].InrushCheck!.Peak.Amperes, 9.5, 9.7);
        Assert.Equal(5, fuses[0].InrushCheck!.Peak.Amperes - fuses[1].InrushCheck!.Peak.Amperes, 1e-6);
        Assert.Equal(["headlamp earth"], fuses[0].Protection.ReturnRuns.Select(r => r.Run.Name));
        Assert.Equal(["tail earth"], fuses[1].Protection.ReturnRuns.Select(r => r.Run.Name));
    }

    [Fact]
    public void Setting_of_the_largest_surge_is_found_with_every_lamp_of_a_row()
    {
        Bike bike = new()
        {
            Fuses = [FuseBike.Fuse("main", 15)],
            Switches = [FuseBike.Contact("lights", "a", "b", "side"), FuseBike.Contact("lights", "a", "c", "main")],
            Lamps =
            [
                FuseBike.Load("side", LampType.Filament, 13.5, 1, litWhen: "lights=side", quantity: 2),
                FuseBike.Load("main", LampType.Filament, 13.5, 1.5, litWhen: "lights=main"),
            ],
        };
        InrushCheck surge = FuseBike.Check(bike).Single().InrushCheck!;
        Assert.Contains("(lights=side)", surge.Explanation, StringComparison.Ordinal);
        Assert.Equal(2, surge.Steady.Amperes, 0.1);
    }

    [Fact]
    public void A_wire_past_a_fuse_is_told_with_the_first_setting_in_which_it_leads_past()
    {
        Bike bike = FuseBike.Round();
        Assert.Equal(
            "Both sides are joined to the battery without a fuse in the setting 'everything off': a short draws its "
                + "current past it.",
            FuseBike.Check(FuseBike.Bypassed()).Single().Reasons[0]
        );
        Bike held = bike with
        {
            Switches = bike.Switches.Add(FuseBike.Contact("limp home", "fuse in", "fuse out", "on")),
        };
        Assert.Equal(
            "Both sides are joined to the battery without a fuse in the setting 'limp home=on': a short draws its "
                + "current past it.",
            FuseBike.Check(held).Single().Reasons[0]
        );
    }

    [Fact]
    public void A_battery_lead_is_one_from_the_first_setting_on_and_no_matter_what_hangs_on_the_battery_itself()
    {
        Bike bike = FuseBike.Round();
        bike = bike with
        {
            Lamps = bike.Lamps.Add(
                FuseBike.Load("clock", LampType.Resistor, 12, 0.1, Bike.BatteryPlus, Bike.BatteryMinus)
            ),
        };
        UnfusedRun lead = Assert.Single(
            FuseBike.Unfused(bike)
        );
        Assert.Equal((true, "everything off"), (lead.IsBatteryLead, lead.Setting.ToString()));
        // A lamp that hangs on the lead by the wire listed as its return.
        bike = bike with
        {
            Lamps = bike.Lamps.Add(FuseBike.Load("pilot", LampType.Resistor, 12, 0.1, Bike.BatteryMinus, "fuse in")),
        };
        Assert.False(
            Assert
                .Single(
                    FuseBike.Unfused(bike)
                )
                .IsBatteryLead
        );
    }

    // A spare wire from the battery that ends at nothing is no lead to a fuse.
    [Fact]
    public void A_wire_from_the_battery_to_nowhere_is_not_a_battery_lead()
    {
        Bike bike = FuseBike.Round();
        bike = bike with { Runs = bike.Runs.Add(FuseBike.Run("spare", Bike.BatteryPlus, "spare end", "1 mm2", 1)) };
        Assert.Equal(
            [("battery lead", true), ("spare", false)],
            FuseBike.Unfused(bike).Select(u => (u.Run.Name, u.IsBatteryLead))
        );
    }

    // 7.5 A × 0.75 = 5.625 A; 0.35 mm² carries 9 A.
    [Fact]
    public void A_load_just_at_a_limit_is_carried()
    {
        Bike bike = FuseBike.Round(fuse: 7.5);
        bike = bike with
        {
            Lamps = bike.Lamps.SetItem(
                0,
                FuseBike.Load("headlamp", LampType.Fixed, 12, 5.125, "headlamp +", "headlamp -")
            ),
        };
        FuseSuitability fuse = FuseBike.Check(bike).Single();
        Assert.Equal(FuseVerdict.Suits, fuse.Verdict);
        Assert.Equal(0, fuse.Steady.Headroom.Amperes, 1e-9);
        Assert.Equal(7.5, fuse.Advice.Smallest!.Value.Amperes);
        bike = FuseBike.Round(fuse: 20);
        bike = bike with
        {
            Runs =
            [
                .. bike.Runs.Select(r => r.Name == "headlamp feed" ? r with { Wire = FuseBike.Wire("0.35 mm2") } : r),
            ],
            Lamps = bike.Lamps.SetItem(0, FuseBike.Load("headlamp", LampType.Fixed, 12, 9, "headlamp +", "headlamp -")),
        };
        Assert.True(
            FuseBike.Check(bike).Single().Protection.DownstreamRuns.Single(r => r.Run.Name == "headlamp feed").HoldsLoad
        );
    }

    // 108.6 mΩ + 29.425 m × 24.7 = 835.4 mΩ before the fuse. With the 10.91 mΩ of 7.5 A the short draws 14.95 A, 199 %;
    // with the 4.8 mΩ of the fitted 15 A it would draw 15.06 A, 201 %. 10 A (7.7 mΩ): 150 %, within the wires'
    // overload; with 15 A about 100 %: it never opens.
    [Fact]
    public void A_rating_is_judged_with_its_own_resistance_not_that_of_the_fuse_fitted()
    {
        FuseSuitability fuse = FuseBike.Check(FuseBike.Round(tailMetres: 29.425)).Single();
        Assert.Equal(840.2, fuse.Clearing.Single(c => c.Run.Name == "tail feed").LoopResistance.Milliohms, 0.01);
        Assert.Equal(10, fuse.Advice.MaximumRatingForWire!.Value.Amperes);
    }

    [Fact]
    public void A_surge_that_may_open_the_fuse_is_a_reason()
    {
        Bike bike = new()
        {
            Fuses = [FuseBike.Fuse("main", 5)],
            Lamps = [FuseBike.Load("headlamp", LampType.Halogen, 13.5, 4.5)],
        };
        FuseSuitability fuse = FuseBike
            .Check(bike, new FuseOptions { ContinuousLoadFactor = Ratio.FromPercent(100) })
            .Single();
        Assert.Equal($"Inrush current may open it: {fuse.InrushCheck!.Explanation}.", Assert.Single(fuse.Reasons));
    }

    [Fact]
    public void Way_back_of_a_short_is_that_of_the_lamp_worst_off_whatever_their_order()
    {
        Bike bike = FuseBike.Round();
        foreach (Bike listed in new[] { bike, bike with { Lamps = [.. bike.Lamps.Reverse()] } })
        {
            ShortCircuitCheck feed = Clearing(listed, "feed");
            Assert.Equal("tail -", Clearing(listed, "feed", "lights=on").ReturnFrom);
            Assert.Equal("headlamp -", Clearing(listed, "headlamp feed").ReturnFrom);
            // Lights off no lamp hangs on the feed: nothing tells the way back, and the loop is the shorter.
            Assert.Equal("lights=on", feed.Setting.ToString());
        }
    }

    [Fact]
    public void Lamp_at_the_battery_itself_returns_without_resistance_and_is_named()
    {
        foreach (bool positiveEarth in new[] { false, true })
        {
            Bike bike = FuseBike.Round();
            string live = positiveEarth ? Bike.BatteryMinus : Bike.BatteryPlus,
                earth = positiveEarth ? Bike.BatteryPlus : Bike.BatteryMinus;
            bike = bike with
            {
                Earth = positiveEarth ? Earth.Positive : Earth.Negative,
                Runs =
                [
                    .. bike
                        .Runs.Where(r => r.Name is not "tail earth")
                        .Select(r =>
                            r with
                            {
                                From = r.From == Bike.BatteryPlus ? live : r.From,
                                To = r.To == Bike.BatteryMinus ? earth : r.To,
                            }
                        ),
                ],
                Lamps = bike.Lamps.SetItem(1, FuseBike.Load("tail", LampType.Filament, 12, 0.5, "tail +", earth)),
            };
            ShortCircuitCheck tail = Clearing(bike, "tail feed");
            Assert.Equal(earth, tail.ReturnFrom);
            // As far as the feed, then the switch and the tail's own feed: nothing for the way back.
            double before = Clearing(bike, "feed", "lights=off").LoopResistance.Milliohms;
            Assert.Equal(
                before + 10 + Milliohms(bike.Runs.Single(r => r.Name == "tail feed")),
                tail.LoopResistance.Milliohms,
                1e-6
            );
        }
    }

    [Fact]
    public void Lamp_whose_way_back_is_open_does_not_tell_the_loop()
    {
        Bike bike = FuseBike.WithHorn("fuse out", contactMilliohms: 25);
        ShortCircuitCheck horn = Clearing(bike, "horn feed");
        Assert.Equal("horn -", horn.ReturnFrom);
        Assert.Equal("horn=on", horn.Setting.ToString());
        double fuse =
            horn.LoopResistance.Milliohms
            - 20
            - 25
            - bike.Runs.Where(r => r.Name is "battery lead" or "horn feed").Sum(Milliohms);
        Assert.Equal(4.8, fuse, 0.1);
    }

    /// <remarks>Of settings with the same loop the first stands.</remarks>
    [Fact]
    public void Clearing_names_the_first_setting_of_the_longest_loop()
    {
        Bike bike = FuseBike.Round();
        bike = bike with { Switches = bike.Switches.Add(FuseBike.Contact("spare", "fuse out", "spare end", "on")) };
        Assert.Equal("lights=on", Clearing(bike, "tail feed").Setting.ToString());
        Assert.Equal("lights=on", Clearing(bike, "headlamp feed").Setting.ToString());
    }

    [Fact]
    public void Fuse_in_the_earth_lead_does_not_protect_what_a_fuse_in_the_feed_does_nor_what_returns_past_it()
    {
        Bike bike = EarthFused();
        Bike twice = bike with
        {
            Runs = [.. bike.Runs.Select(r => r.Name == "tail feed" ? r with { From = "tail fuse out" } : r)],
            Fuses = bike.Fuses.Add(FuseBike.Fuse("tail", 5, "switch out", "tail fuse out")),
        };
        var fuses = FuseBike.Check(twice);
        Assert.Equal(["battery lead", "feed", "headlamp feed"], fuses[0].Clearing.Select(c => c.Run.Name));
        Assert.Equal(["tail feed"], fuses[1].Clearing.Select(c => c.Run.Name));

        Bike past = bike with
        {
            Runs = [.. bike.Runs.Select(r => r.Name == "tail earth" ? r with { To = Bike.BatteryMinus } : r)],
        };
        Assert.Equal(
            ["battery lead", "feed", "headlamp feed"],
            FuseBike.Check(past).Single().Clearing.Select(c => c.Run.Name)
        );
        Assert.Contains(("tail feed", false, "lights=on"), Unfused(past));
    }

    [Fact]
    public void Lamp_that_a_wire_past_the_fuse_feeds_is_none_of_the_fuses()
    {
        FuseSuitability fuse = FuseBike.Check(FuseBike.Bypassed()).Single();
        Assert.Empty(fuse.Protection.ReturnRuns);
        Assert.Empty(fuse.Clearing);
    }

    [Fact]
    public void Lead_to_the_fuse_is_one_whatever_hangs_behind_the_fuse()
    {
        Bike bike = FuseBike.Round();
        bike = bike with
        {
            Lamps = bike.Lamps.Add(FuseBike.Load("pilot", LampType.Resistor, 12, 0.1, "fuse out", Bike.BatteryMinus)),
        };
        Assert.Equal([("battery lead", true, "everything off")], Unfused(bike));
    }

    [Fact]
    public void Unfused_run_is_told_with_the_first_setting_in_which_it_is_one()
    {
        Bike bike = FuseBike.Round();
        bike = bike with
        {
            Runs = bike.Runs.Add(FuseBike.Run("spare", Bike.BatteryPlus, "spare end", "1 mm2", 1)),
            Switches = bike.Switches.Add(FuseBike.Contact("horn", "fuse in", "horn +", "on")),
        };
        Assert.Contains(("spare", false, "everything off"), Unfused(bike));
    }

    private static double Milliohms(Run run) =>
        run.WireResistance(Temperature.FromDegreesCelsius(20)).Milliohms + run.Joints * run.JointResistance.Milliohms;

    private static ShortCircuitCheck Clearing(Bike bike, string run, string? held = null)
    {
        FuseSuitability fuse = held is null
            ? FuseBike.Check(bike).Single()
            : FuseCheck
                .Evaluate(
                    bike,
                    [
                        new HarnessNetwork(bike)
                            .CreateSolver()
                            .Solve(SettingEnumeration.Held(bike, Condition.Parse(held))),
                    ],
                    cancellationToken: TestContext.Current.CancellationToken
                )
                .Single();
        return fuse.Clearing.Single(c => c.Run.Name == run);
    }

    private static IEnumerable<(string, bool, string)> Unfused(Bike bike) =>
        FuseBike.Unfused(bike).Select(u => (u.Run.Name, u.IsBatteryLead, u.Setting.ToString()));

    private static Bike EarthFused()
    {
        Bike bike = FuseBike.Round();
        return bike with
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
    }
}
