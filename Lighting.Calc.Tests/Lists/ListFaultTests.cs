namespace Lighting.Calc.Tests.Lists;

/// <summary>Each bad cell of the other lists with the one message it gives. The bad list replaces its like in a bike
/// that is right.</summary>
public class ListFaultTests
{
    [Theory]
    [InlineData(
        "item,value\nsytem voltage,6\n",
        "2: column 'item' (1): 'sytem voltage' is not an item of this list; the items are name, system voltage, "
            + "battery voltage, charging voltage, battery capacity, battery resistance, wire temperature, earth, "
            + "allowed "
            + "drop, lighting, regulator, regulator resistance, regulator rating, "
            + "regulator joins at, generator resistance, generator joins at, ignition, flasher, flasher load, "
            + "ambient temperature, cable; did you mean "
            + "'system voltage'?"
    )]
    [InlineData(
        "item,value\nearth,negative\nEarth,positive\n",
        "3: column 'item' (1): 'Earth' is given on line 2 already; keep one of the two"
    )]
    [InlineData(
        "item,value\nearth,postive\n",
        "2: column 'value' (2): 'postive' is not an earth; expected negative or positive; did you mean 'positive'?"
    )]
    [InlineData(
        "item,value\nsystem voltage,120 V\n",
        "2: column 'value' (2): '120 V' is out of range; expected 4 V to 60 V"
    )]
    [InlineData(
        "item,value\nbattery capacity,9 V\n",
        "2: column 'value' (2): '9 V' has an unknown unit; expected Ah or mAh"
    )]
    [InlineData(
        "item,value\nwire temperature,300\n",
        "2: column 'value' (2): '300' is out of range; expected -60 °C to 250 °C"
    )]
    [InlineData(
        "item,value\nflasher,termal\n",
        "2: column 'value' (2): 'termal' is not a flasher; expected thermal, electronic or none; did you mean "
            + "'thermal'?"
    )]
    [InlineData("item,value\nallowed drop,0\n", "2: column 'value' (2): '0' is out of range; expected 0.1 % to 100 %")]
    [InlineData("item,value\n,5\n", "2: column 'item' (1): the cell is blank")]
    [InlineData(
        "item,value\ngenerator joins at,nowhere\n",
        "2: column 'value' (2): 'nowhere' is not a point of the bike"
    )]
    public void Bike(string text, string message) => OneFault("bike.csv", text, message);

    [Theory]
    [InlineData(
        "15.5 AWG,1",
        "column 'wire' (4): '15.5 AWG' is not a wire size; expected 4 AWG to 30 AWG, alone or followed by 'stranded', "
            + "0 SWG to 40 SWG, strands such as 14/0.30 or 14/.012, or {metric}; did you mean '16 AWG'?"
    )]
    [InlineData(
        "1.3 mm²,1",
        "column 'wire' (4): '1.3 mm²' is not a wire size; expected 4 AWG to 30 AWG, alone or followed by 'stranded', "
            + "0 SWG to 40 SWG, strands such as 14/0.30 or 14/.012, or {metric}; did you mean '1.25 mm2'?"
    )]
    [InlineData("14 AWG,-1", "column 'length' (5): '-1' is out of range; expected 0 or 0.001 m to 100 m")]
    [InlineData("14 AWG,", "column 'length' (5): the cell is blank")]
    [InlineData(
        "14 AWG,\"1,8 m\"",
        "column 'length' (5): '1,8 m' is not a number of metres; write a decimal point: 1.8 m"
    )]
    public void Runs(string cells, string message)
    {
        string metric = string.Join(", ", Calc.WireTable.Of(Calc.WireConstruction.MetricCable).Select(w => w.Name));
        OneFault(
            "runs.csv",
            ListSamples.RunsCsv.Replace("14 AWG,30 cm", cells, StringComparison.Ordinal),
            $"2: {message.Replace("{metric}", metric, StringComparison.Ordinal)}"
        );
    }

    [Theory]
    [InlineData(",1,2 mΩ,1", ",-1,2 mΩ,1", "2: column 'joints' (6): '-1' is not a whole number from 0 to 1000")]
    [InlineData(
        ",1,2 mΩ,1",
        ",1,1e-310,1",
        "2: column 'joint resistance' (7): '1e-310' is out of range; expected 0 or 0.000001 Ω to 100 Ω"
    )]
    [InlineData(",1,2 mΩ,1", ",1,2 mΩ,0", "2: column 'bundle' (8): '0' is not a whole number from 1 to 1000")]
    [InlineData(
        "to switch,main out",
        "supply,main out",
        "3: column 'run' (1): 'supply' is the name of the run on line 2 already; give each its own name"
    )]
    [InlineData(
        "battery +,main in",
        "main in,Main In",
        "2: column 'to' (3): 'Main In' is the point it comes from as well; expected two different points"
    )]
    public void Runs_in_other_columns(string right, string wrong, string message)
    {
        string text = ListSamples.RunsCsv.Replace(right, wrong, StringComparison.Ordinal);
        Assert.Equal($"runs.csv:{message}", ListSamples.Faults(ListSamples.WholeBut("runs.csv", text))[0]);
    }

    [Theory]
    [InlineData("pimk", "'PK'")]
    [InlineData("RE", "'RD'")]
    [InlineData("BURD", "'RDBU' or 'BU/RD'")]
    [InlineData("YEGN", "'GNYE' or 'YE/GN'")]
    [InlineData("WH-RED-BK", null)]
    [InlineData("green and yelow", "'GNYE'")]
    [InlineData("green/yelow", "'GNYE' or 'GN/YE'")]
    [InlineData("RDRD", "'RD'")]
    [InlineData("RD/RD", "'RD'")]
    [InlineData("stripes", null)]
    public void Runs_with_a_colour_that_is_none(string colour, string? nearest)
    {
        string hint = nearest is null ? "" : $"; did you mean {nearest}?";
        OneFault(
            "runs.csv",
            ListSamples.RunsCsv.Replace("RDBU", colour, StringComparison.Ordinal),
            $"3: column 'colour' (9): '{colour}' is not a colour; expected BK, BN, RD, OG, YE, GN, BU, VT, GY, WH, PK, "
                + "GD, TQ, SR, a word such as red, a base and its tracer such as GN/RD or green/red, or two codes as "
                + $"IEC 60757 joins them, such as RDBU{hint}"
        );
    }

    [Theory]
    [InlineData(
        "dip feed,low,",
        "dip feed,low||high,",
        "2: column 'closed in' (4): 'low||high' is not a list of positions; expected positions joined by '|', such as "
            + "low|high"
    )]
    [InlineData("dip feed,low,", "dip feed,low|Low,", "2: column 'closed in' (4): 'low|Low' names a position twice")]
    [InlineData(
        "dash feed,low|high",
        "dip feed,high",
        "3: column 'switch' (1): 'lights (switch in to dip feed)' is the contact on line 2 already; join its positions "
            + "with '|' in one row"
    )]
    [InlineData(
        "brake,switch in",
        "br=ke,switch in",
        "4: column 'switch' (1): 'br=ke' holds one of '=', ';' and '|', which conditions use"
    )]
    [InlineData(
        "low,10 mΩ",
        "low,10 mV",
        "2: column 'resistance' (5): '10 mV' has an unknown unit; expected Ω, mΩ, kΩ or MΩ"
    )]
    public void Switches(string right, string wrong, string message)
    {
        string text = ListSamples.SwitchesCsv.Replace(right, wrong, StringComparison.Ordinal);
        Assert.NotEqual(ListSamples.SwitchesCsv, text);
        Assert.Contains($"switches.csv:{message}", ListSamples.Faults(ListSamples.WholeBut("switches.csv", text)));
    }

    [Theory]
    [InlineData("main,main in,main out,0,,", "2: column 'rating' (4): '0' is out of range; expected 0.01 A to 500 A")]
    [InlineData("main,main in,main out,,,", "2: column 'rating' (4): the cell is blank")]
    [InlineData("main,main in,,15,,", "2: column 'to' (3): the cell is blank")]
    [InlineData(
        "main,main in,main out,15,balde,",
        "2: column 'style' (5): 'balde' is not a style of fuse; expected blade, mini, maxi or glass; did you mean "
            + "'blade'?"
    )]
    public void Fuses(string row, string message) =>
        OneFault("fuses.csv", $"fuse,from,to,rating,style,resistance\n{row}\n", message);

    [Fact]
    public void A_second_fuse_needs_runs() =>
        Assert.Equal(
            [
                "fuses.csv:3: column 'fuse' (1): 'tail' is a second fuse, after the one on line 2; a bike with several "
                    + "fuses needs runs.csv to show what each fuse feeds",
            ],
            ListSamples.Faults(
                ListSamples.Of(
                    ("lamps.csv", ListSamples.LampsCsv),
                    ("fuses.csv", "fuse,from,to,rating\nmain,,,15\ntail,,,5\n")
                )
            )
        );

    [Theory]
    [InlineData("-5,1,", "2: column 'rpm' (1): '-5' is out of range; expected 0 or 1 rpm to 30000 rpm")]
    [InlineData("1000,,", "2: column 'current' (2): the cell is blank")]
    [InlineData(
        "1000,1,\n1000,2,",
        "3: column 'rpm' (1): '1000' is given on line 2 already; keep one of the two, or give them different "
            + "conditions in 'when'"
    )]
    [InlineData(
        "1000,1,light=low",
        "2: column 'when' (3): 'light' is not a switch of the bike; the switches are lights, brake; did you mean "
            + "'lights'?"
    )]
    public void Charging(string rows, string message) =>
        OneFault("charging.csv", $"rpm,current,when\n{rows}\n", message);

    [Theory]
    [InlineData("town,1000,0,", "2: column 'minutes' (3): '0' is out of range; expected 0.01 min to 10000 min")]
    [InlineData(
        "town,1000,5,lights=low|high",
        "2: column 'when' (4): 'lights=low|high' holds the switch 'lights' in several positions at once; expected one "
            + "position of each switch"
    )]
    [InlineData(
        "town,1000,5,lights=hihg",
        "2: column 'when' (4): 'hihg' is not a position of the switch 'lights'; its positions are off, low, high; did "
            + "you mean 'high'?"
    )]
    public void Ride(string row, string message) => OneFault("ride.csv", $"stretch,rpm,minutes,when\n{row}\n", message);

    [Theory]
    [InlineData(
        "instruments,,led,12,1",
        "2: column 'lamp' (1): 'instruments' is not a lamp of the bike; did you mean 'instrument'?"
    )]
    [InlineData(
        "stop,,,12,2",
        "2: column 'type' (3): the cell is blank; a lamp without a code needs its type: filament, halogen, led, led "
            + "resistor, fixed or resistor"
    )]
    [InlineData(
        "stop,,led,12,2\nstop,,led,12,3",
        "3: column 'lamp' (1): 'stop' is the name of the lamp on line 2 already; give each its own name"
    )]
    [InlineData(
        "stop,P21X,,,",
        "2: column 'new code' (2): 'P21X' is not a known lamp code; expected a code of the lamp table, or no code but "
            + "'volts' and 'watts'; did you mean 'P21W'?"
    )]
    public void Swaps(string rows, string message) =>
        OneFault("swaps.csv", $"lamp,new code,type,volts,watts\n{rows}\n", message);

    [Theory]
    [InlineData(
        ",dip fed,meter,9.4",
        "2: column 'point' (2): 'dip fed' is not a point of the bike; did you mean 'dip feed'?"
    )]
    [InlineData(
        ",tail,ammeter,9.4",
        "2: column 'point' (2): 'tail' is not a fuse of the bike for an ammeter to replace"
    )]
    [InlineData(",dip feed,visual,dim", "2: column 'point' (2): 'dip feed' is not a lamp or run of the bike")]
    [InlineData(
        ",dip feed,ohmmeter,dim",
        "2: column 'point' (2): 'dip feed' is not a lamp, run, switch or fuse of the bike|2: column 'reading' (4): "
            + "'dim' is not a number of ohms; expected a number such as 1 Ω"
    )]
    [InlineData(
        ",dip feed,metre,9.4",
        "2: column 'instrument' (3): 'metre' is not an instrument; expected meter, test lamp, ammeter, ohmmeter, "
            + "visual, good lamp, bench, bench reversed or wiggle; did you mean 'meter'?"
    )]
    [InlineData(
        ",dip feed,meter,dim",
        "2: column 'reading' (4): 'dim' is not a number of volts; expected a number such as 1 V"
    )]
    [InlineData(
        ",dip feed,test lamp,12",
        "2: column 'reading' (4): '12' is not how a lamp looks; expected dark, dim, good, lit, bright or off"
    )]
    [InlineData(",dip feed,meter,9.4 A", "2: column 'reading' (4): '9.4 A' has an unknown unit; expected V, mV or kV")]
    [InlineData(
        "lihgts=low,dip feed,meter,9",
        "2: column 'when' (1): 'lihgts' is not a switch of the bike; the switches are lights, brake; did you mean "
            + "'lights'?"
    )]
    public void Readings(string row, string messages) =>
        Assert.Equal(
            messages.Split('|').Select(m => $"readings.csv:{m}"),
            ListSamples.Faults(ListSamples.WholeBut("readings.csv", $"when,point,instrument,reading\n{row}\n"))
        );

    [Fact]
    public void A_lamp_lit_in_a_position_that_no_contact_has() =>
        OneFault(
            "lamps.csv",
            ListSamples.LampsCsv.Replace(
                "halogen,1,13.2,58,,,lights=low",
                "halogen,1,13.2,58,,,lights=lwo",
                StringComparison.Ordinal
            ),
            "2: column 'lit when' (10): 'lwo' is not a position of the switch 'lights'; its positions are off, low, "
                + "high; did you mean 'low'?"
        );

    private static void OneFault(string list, string text, string message) =>
        Assert.Equal([$"{list}:{message}"], ListSamples.Faults(ListSamples.WholeBut(list, text)));
}
