namespace Lighting.Calc.Tests.Lists;

/// <summary>What is odd but computable: a caution each, and the bike all the same.</summary>
public class CautionTests
{
    private const string SixVoltLamps = "circuit,lamp,volts,watts\nheadlamp,dip,6,25\nrear,tail,6.3,3\n";

    [Fact]
    public void Only_6_volt_lamps_on_a_12_volt_bike() =>
        Assert.Equal(
            [
                "lamps.csv: every lamp is for 6 to 6.3 V, and the bike is 12 V; set 'system voltage' in bike.csv if "
                    + "the bike is not",
            ],
            ListSamples.Cautions(ListSamples.Of(("lamps.csv", SixVoltLamps)))
        );

    [Fact]
    public void Only_6_volt_lamps_suit_a_6_volt_bike() =>
        Assert.Empty(
            ListSamples.Cautions(
                ListSamples.Of(("bike.csv", "item,value\nsystem voltage,6\n"), ("lamps.csv", SixVoltLamps))
            )
        );

    [Fact]
    public void Only_12_volt_lamps_on_a_6_volt_bike() =>
        Assert.Equal(
            [
                "lamps.csv: every lamp is for 12 V, and the bike is 6 V; set 'system voltage' in bike.csv if the bike "
                    + "is not",
            ],
            ListSamples.Cautions(
                ListSamples.Of(
                    ("bike.csv", "item,value\nsystem voltage,6\n"),
                    ("lamps.csv", "circuit,lamp,volts,watts\nrear,tail,12,5\n")
                )
            )
        );

    [Fact]
    public void One_6_volt_lamp_among_12_volt_lamps() =>
        Assert.Equal(
            ["lamps.csv:3: column 'volts' (4): '6 V' is far from the system voltage, 12 V"],
            ListSamples.Cautions(
                ListSamples.Of(("lamps.csv", "circuit,lamp,code,volts,watts\nrear,stop,P21W,,\nrear,tail,,6 V,3\n"))
            )
        );

    [Fact]
    public void A_code_of_another_system_is_computed_with_a_caution()
    {
        var source = ListSamples.Of(
            ("bike.csv", "item,value\nsystem voltage,6\n"),
            ("lamps.csv", "circuit,lamp,code,volts,watts\nrear,turn,PY21W,,\nrear,tail,,6,3\n")
        );
        Assert.Equal(
            ["lamps.csv:2: column 'code' (3): 'PY21W' is published for 12 V systems only, and the bike is 6 V"],
            ListSamples.Cautions(source)
        );
        Assert.Equal(13.5, Calc.BikeLists.Read(source).Value.Bike.Lamps[0].Specification.ReferenceVoltage.Volts);
    }

    [Fact]
    public void An_unusual_system_voltage_and_battery_volts_far_from_it() =>
        Assert.Equal(
            [
                "bike.csv:2: column 'value' (2): '8' is an unusual system voltage; published lamps are for 6 V and "
                    + "12 V",
                "bike.csv:3: column 'value' (2): '12.6 V' is far from the system voltage, 8 V",
            ],
            ListSamples.Cautions(
                ListSamples.Of(
                    ("bike.csv", "item,value\nsystem voltage,8\nbattery voltage,12.6 V\n"),
                    ("lamps.csv", "circuit,lamp,volts,watts\nrear,tail,8,5\n")
                )
            )
        );

    [Fact]
    public void A_position_and_a_switch_that_one_row_alone_names_like_another() =>
        Assert.Equal(
            [
                "lamps.csv:4: column 'lit when' (5): 'hihg' is a position of the switch 'lights' that only this row "
                    + "names; did you mean 'high'?",
                "lamps.csv:5: column 'lit when' (5): 'light' is a switch that only this row names; did you mean "
                    + "'lights'?",
            ],
            ListSamples.Cautions(
                ListSamples.Of(
                    (
                        "lamps.csv",
                        "circuit,lamp,volts,watts,lit "
                            + "when\nh,a,12,5,lights=low|high\nh,b,12,5,lights=high\nh,c,12,5,lights=hihg\n"
                            + "h,d,12,5,light=low\n"
                    )
                )
            )
        );

    [Fact]
    public void Numbered_positions_are_not_taken_for_misspelt_ones() =>
        Assert.Empty(
            ListSamples.Cautions(
                ListSamples.Of(
                    ("lamps.csv", "circuit,lamp,volts,watts,lit when\nh,a,12,5,lights=pos1\nh,b,12,5,lights=pos2\n")
                )
            )
        );

    [Fact]
    public void A_point_that_nothing_else_is_joined_to_next_to_one_like_it() =>
        Assert.Equal(
            [
                "switches.csv:2: column 'to' (3): 'dip fed' is a point that nothing else is joined to; did you mean "
                    + "'dip feed'?",
                "lamps.csv:2: column 'feed' (12): 'dip feed' is a point that nothing else is joined to; did you mean "
                    + "'dip fed'?",
            ],
            ListSamples
                .Cautions(
                    WithoutReadings(
                        "switches.csv",
                        ListSamples.SwitchesCsv.Replace("dip feed", "dip fed", StringComparison.Ordinal)
                    )
                )
                .OrderDescending(StringComparer.Ordinal)
        );

    [Fact]
    public void A_contact_closed_in_off() =>
        Assert.Equal(
            [
                "switches.csv:4: column 'closed in' (4): 'off' closes the contact in 'off', the position of a switch "
                    + "at rest",
            ],
            ListSamples.Cautions(
                ListSamples.Of(
                    ("lamps.csv", "circuit,lamp,volts,watts\nrear,tail,12,5\n"),
                    ("switches.csv", ListSamples.SwitchesCsv.Replace(",on,", ",off,", StringComparison.Ordinal))
                )
            )
        );

    private static ListSource WithoutReadings(string name, string text) =>
        ListSamples.Of([
            .. ListSamples.Texts().Where(t => t.Name != "readings.csv").Select(t => t.Name == name ? (name, text) : t),
        ]);
}
