using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc.Tests.Network;

/// <summary>What the review of a harness says, whole sentences, each finding alone.</summary>
public class ReviewWordsTests
{
    [Fact]
    public void A_bike_without_runs_is_not_reviewed() =>
        Assert.Empty(
            Review(
                new Bike
                {
                    Lamps =
                    [
                        Benches.Lamp("stop", "", "", Benches.Filament(13.5, 25), "brake=on") with
                        {
                            Feed = null,
                            Return = null,
                        },
                    ],
                }
            )
        );

    // One indicator lamp between the two sides: whichever side is on, its current goes on through the other side's
    // lamp.
    [Fact]
    public void A_lamp_that_returns_through_another_is_noted_not_faulted()
    {
        Bike bike = Indicators();
        Finding finding = Assert.Single(Review(bike));
        Assert.Equal(
            (
                Severity.Note,
                "tell-tale",
                "Its current also flows through another lamp in the setting 'turn=left' and 1 more."
            ),
            (finding.Severity, finding.Subject, finding.Message)
        );
    }

    [Fact]
    public void A_lamp_that_no_way_leads_through_is_dark_even_beside_lamps()
    {
        Bike bike = Indicators();
        // The right-hand lamp has no return any more: nothing carries the tell-tale's current on when the left side is
        // on.
        bike = bike with
        {
            Lamps = bike.Lamps.SetItem(1, bike.Lamps[1] with { Return = "loose end" }),
        };
        ImmutableArray<Finding> findings = Review(bike);
        Assert.Contains(
            findings,
            f =>
                f is { Severity: Severity.Fault, Subject: "tell-tale" }
                && f.Message
                    == "'lit when' says lit in the setting 'turn=left', but the wiring leaves it dark: nothing "
                        + "connects 'right' to 'battery -'."
        );
        Assert.Contains(
            findings,
            f =>
                f is { Severity: Severity.Note, Subject: "tell-tale" }
                && f.Message == "Its current also flows through another lamp in the setting 'turn=right'."
        );
    }

    [Fact]
    public void Contacts_that_would_all_have_to_close_are_named_together()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with
        {
            Runs = bike.Runs.SetItem(1, bike.Runs[1] with { From = "pillar" }),
            Switches = bike.Switches.Add(Benches.Contact("stand", "low line", "pillar", "up")),
        };
        Finding finding = Review(bike).First(f => f.Subject == "low beam");
        Assert.Equal(
            "'lit when' says lit in the setting 'lights=low' and 1 more, but the wiring leaves it dark: open contact "
                + "'stand (low line to pillar)' on the way "
                + "battery + > main > fused > feed > lights in > lights (lights in to low line) > low line > stand "
                + "(low line to pillar) > pillar > low wire > low feed.",
            finding.Message
        );
        bike = bike with
        {
            Lamps = bike.Lamps.SetItem(
                0,
                bike.Lamps[0] with
                {
                    LitWhen = Condition.Parse("stand=off|up; lights=off|low|pass"),
                }
            ),
        };
        Assert.Contains(
            "leaves it dark: open contact 'lights (lights in to low line)' and 'stand (low line to pillar)' on the way",
            Review(bike).First(f => f.Subject == "low beam").Message,
            StringComparison.Ordinal
        );
    }

    // The short way has two open contacts, the long one a single one: that is the one to close.
    [Fact]
    public void The_way_with_fewest_open_contacts_shows_which_would_have_to_close()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with
        {
            Lamps =
            [
                bike.Lamps[2] with
                {
                    Lamp = "spot",
                    Circuit = "spot",
                    Feed = "spot feed",
                    LitWhen = Condition.Parse("one=off|on"),
                },
            ],
            Runs =
            [
                bike.Runs[0],
                Benches.Run("long 1", "lights in", "a", 1),
                Benches.Run("long 2", "a", "b", 1),
                Benches.Run("long 3", "b", "c", 1),
            ],
            Switches =
            [
                Benches.Contact("one", "lights in", "m", "on"),
                Benches.Contact("two", "m", "spot feed", "on"),
                Benches.Contact("three", "c", "spot feed", "on"),
            ],
        };
        Assert.Contains(
            "leaves it dark: open contact 'three (c to spot feed)' on the way battery + > main > fused > feed > lights "
                + "in > long 1 > a",
            Review(bike).First(f => f.Subject == "spot").Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_fuse_behind_another_feeds()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with
        {
            Runs = bike.Runs.SetItem(3, bike.Runs[3] with { From = "tail fused" }),
            Fuses = bike.Fuses.Add(
                new Fuse
                {
                    Name = "tail fuse",
                    From = "tail line",
                    To = "tail fused",
                    Rating = ElectricCurrent.FromAmperes(5),
                }
            ),
        };
        Assert.Empty(Review(bike));
    }

    [Fact]
    public void A_load_straight_on_the_battery_hangs_on_it_without_a_fuse()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with
        {
            Lamps = bike.Lamps.Add(Benches.Lamp("clock", Bike.BatteryPlus, Bike.BatteryMinus, Benches.Filament(12, 2))),
        };
        Finding finding = Assert.Single(Review(bike));
        Assert.Equal(
            (
                Severity.Fault,
                "clock",
                "Fed without a fuse in the setting 'everything off': connected directly to battery +."
            ),
            (finding.Severity, finding.Subject, finding.Message)
        );
        // A lighting coil limits its own current.
        Assert.Empty(Review(bike with { Lighting = LightingSupply.Direct }));
    }

    [Fact]
    public void The_way_past_the_fuse_is_told_in_the_first_setting_in_which_there_is_one()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with
        {
            Switches = bike.Switches.Add(Benches.Contact("bypass", Bike.BatteryPlus, "tail line", "on")),
        };
        ImmutableArray<Finding> findings = Review(bike);
        Assert.Equal(
            "Fed without a fuse in the setting 'bypass=on': battery + > bypass (battery + to tail line) > tail line > "
                + "tail wire > tail feed. Also: low beam, high beam.",
            findings.Single(f => f.Subject == "tail" && f.Message.StartsWith("Fed", StringComparison.Ordinal)).Message
        );
    }

    [Fact]
    public void A_fuse_off_the_battery_feeds_nothing()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with
        {
            Fuses = bike.Fuses.Add(
                new Fuse
                {
                    Name = "spare",
                    From = "box a",
                    To = "box b",
                    Rating = ElectricCurrent.FromAmperes(10),
                }
            ),
        };
        Assert.Equal(
            [
                (Severity.Caution, "spare", "Neither side of the fuse is connected to battery +: it feeds nothing."),
                (
                    Severity.Caution,
                    "box a",
                    "Only one part is connected to this point. Check for a missing part or a misspelt name. Also: "
                        + "box b."
                ),
            ],
            Review(bike).Select(f => (f.Severity, f.Subject, f.Message))
        );
    }

    [Fact]
    public void A_fuse_listed_the_wrong_way_round_still_feeds()
    {
        Bike bike = Benches.Sidecar();
        Assert.Empty(Review(bike with { Fuses = [bike.Fuses[0] with { From = "fused", To = Bike.BatteryPlus }] }));
    }

    [Fact]
    public void A_fuse_on_the_battery_that_no_load_hangs_on_is_told()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with
        {
            Fuses = bike.Fuses.Add(
                new Fuse
                {
                    Name = "spare",
                    From = Bike.BatteryPlus,
                    To = "socket",
                    Rating = ElectricCurrent.FromAmperes(10),
                }
            ),
            Runs = bike.Runs.Add(Benches.Run("socket wire", "socket", "plug", 1)),
        };
        Assert.Equal(
            [
                (Severity.Caution, "spare", "The fuse feeds no lamp or other load."),
                (
                    Severity.Caution,
                    "plug",
                    "Only one part is connected to this point. Check for a missing part or a misspelt name."
                ),
            ],
            Review(bike).Select(f => (f.Severity, f.Subject, f.Message))
        );
    }

    [Fact]
    public void Positions_and_switches_that_change_nothing_are_told()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with
        {
            Lamps = bike.Lamps.SetItem(
                0,
                bike.Lamps[0] with
                {
                    LitWhen = Condition.Parse("lights=low|pass|dip; brake=off"),
                }
            ),
        };
        Assert.Equal(
            [
                ("lights", "No contact is closed in the position 'dip': it does what 'off' does."),
                ("brake", "A condition names this switch, but it has no contact: it changes nothing."),
            ],
            Review(bike).Where(f => f.Severity == Severity.Caution).Select(f => (f.Subject, f.Message))
        );
    }

    [Fact]
    public void A_position_that_no_condition_names_is_noted_where_others_of_its_switch_are()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with
        {
            Switches = bike.Switches.Add(Benches.Contact("lights", "lights in", "garage lamp socket", "park")),
            Runs = bike.Runs.Add(Benches.Run("socket", "garage lamp socket", "tail line", 1)),
        };
        bike = bike with
        {
            Lamps = [.. bike.Lamps.Select(l => l.Lamp == "tail" ? l with { LitWhen = Condition.Always } : l)],
        };
        Assert.Equal(
            "No 'lit when' names the position 'park'.",
            Review(bike).Single(f => f.Subject == "lights").Message
        );
        Assert.Equal(Severity.Note, Review(bike).Single(f => f.Subject == "lights").Severity);
        // A switch that no condition names at all has nothing to be held against.
        bike = bike with
        {
            Lamps = [.. bike.Lamps.Select(l => l with { LitWhen = Condition.Always })],
        };
        Assert.DoesNotContain(Review(bike), f => f.Subject == "lights");
    }

    // Flasher out to the left and the right lamp by one switch; the tell-tale between them.
    private static Bike Indicators() =>
        new()
        {
            Name = "indicators",
            Fuses =
            [
                new Fuse
                {
                    Name = "main",
                    From = Bike.BatteryPlus,
                    To = "fused",
                    Rating = ElectricCurrent.FromAmperes(10),
                },
            ],
            Runs =
            [
                Benches.Run("flasher", "fused", "flasher out", 1),
                Benches.Run("rear earth", "rear frame", Bike.BatteryMinus, 1),
            ],
            Switches =
            [
                Benches.Contact("turn", "flasher out", "left", "left"),
                Benches.Contact("turn", "flasher out", "right", "right"),
            ],
            Lamps =
            [
                Benches.Lamp("left lamp", "left", "rear frame", Benches.Filament(12, 21), "turn=left"),
                Benches.Lamp("right lamp", "right", "rear frame", Benches.Filament(12, 21), "turn=right"),
                Benches.Lamp(
                    "tell-tale",
                    "left",
                    "right",
                    LampSpecification.FromPower(LampType.Filament, ElectricPotential.FromVolts(12), Power.FromWatts(2)),
                    "turn=left|right"
                ),
            ],
        };

    private static ImmutableArray<Finding> Review(Bike bike) => Benches.Review(bike);
}
