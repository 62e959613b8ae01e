namespace Lighting.Calc.Tests.Lists;

/// <summary>Each bad cell of <c>lamps.csv</c> with the one message it gives.</summary>
public class LampFaultTests
{
    private const string Header = "circuit,lamp,code,type,quantity,volts,watts,amps,minimum volts,lit when,duty\n";

    [Theory]
    [InlineData(
        "rear,tail,,,,12,\"55,0\",,,,",
        "column 'watts' (7): '55,0' is not a number of watts; write a decimal point: 55.0"
    )]
    [InlineData(
        "rear,tail,,,,12,\"1.234,5 W\",,,,",
        "column 'watts' (7): '1.234,5 W' is not a number of watts; write a decimal point: 1234.5 W"
    )]
    [InlineData(
        "rear,tail,,,,12,\"1,500,000\",,,,",
        "column 'watts' (7): '1,500,000' is not a number of watts; write a decimal point and no thousands separator"
    )]
    [InlineData(
        "rear,tail,,,,12,five,,,,",
        "column 'watts' (7): 'five' is not a number of watts; expected a number such as 1 W"
    )]
    [InlineData(
        "rear,tail,,,,12,NaN,,,,",
        "column 'watts' (7): 'NaN' is not a number of watts; expected a number such as 1 W"
    )]
    [InlineData(
        "rear,tail,,,,12,Infinity,,,,",
        "column 'watts' (7): 'Infinity' is not a number of watts; expected a number such as 1 W"
    )]
    [InlineData("rear,tail,,,,12,0x10,,,,", "column 'watts' (7): '0x10' has an unknown unit; expected W, mW or kW")]
    [InlineData(
        "rear,tail,,,,12,1 000,,,,",
        "column 'watts' (7): '1 000' is not a number of watts; expected a number such as 1 W"
    )]
    [InlineData(
        "rear,tail,,,,12,1.2.3,,,,",
        "column 'watts' (7): '1.2.3' is not a number of watts; expected a number such as 1 W"
    )]
    [InlineData("rear,tail,,,,12,55 V,,,,", "column 'watts' (7): '55 V' has an unknown unit; expected W, mW or kW")]
    [InlineData("rear,tail,,,,12,0,,,,", "column 'watts' (7): '0' is out of range; expected 0.001 W to 2000 W")]
    [InlineData("rear,tail,,,,12,-5 W,,,,", "column 'watts' (7): '-5 W' is out of range; expected 0.001 W to 2000 W")]
    [InlineData("rear,tail,,,,12,1e308,,,,", "column 'watts' (7): '1e308' is out of range; expected 0.001 W to 2000 W")]
    [InlineData("rear,tail,,,,12,1e999,,,,", "column 'watts' (7): '1e999' is out of range; expected 0.001 W to 2000 W")]
    [InlineData(
        "rear,tail,,,,12,4.9e-324,,,,",
        "column 'watts' (7): '4.9e-324' is out of range; expected 0.001 W to 2000 W"
    )]
    [InlineData(
        "rear,tail,,,,12,1e-400,,,,",
        "column 'watts' (7): '1e-400' is out of range; expected 0.001 W to 2000 W"
    )]
    [InlineData("rear,tail,,,1.5,12,5,,,,", "column 'quantity' (5): '1.5' is not a whole number from 1 to 1000")]
    [InlineData("rear,tail,,,0,12,5,,,,", "column 'quantity' (5): '0' is not a whole number from 1 to 1000")]
    [InlineData(
        "rear,tail,,,99999999999,12,5,,,,",
        "column 'quantity' (5): '99999999999' is not a whole number from 1 to 1000"
    )]
    [InlineData("rear,tail,,,,12,5,,,,3", "column 'duty' (11): '3' is out of range; expected 0 to 1")]
    [InlineData("rear,tail,,,,12,5,,,,-1 %", "column 'duty' (11): '-1 %' is out of range; expected 0 to 1")]
    [InlineData("rear,tail,,,,12,5,,,,half", "column 'duty' (11): 'half' is not a share; expected a number such as 1")]
    [InlineData(
        "rear,tail,,hallogen,,12,5,,,,",
        "column 'type' (4): 'hallogen' is not a type of lamp; expected filament, halogen, led, led resistor, fixed or "
            + "resistor; did you mean 'halogen'?"
    )]
    [InlineData(",tail,,,,12,5,,,,", "column 'circuit' (1): the cell is blank")]
    [InlineData("rear,,,,,12,5,,,,", "column 'lamp' (2): the cell is blank")]
    [InlineData(
        "rear,tail,,,,,,,,,",
        "column 'code' (3): the lamp has no code and no figures; give a code, or 'watts' or 'amps' and, unless they "
            + "are those at the system voltage, 'volts'"
    )]
    [InlineData(
        "rear,tail,,,,12,,,,,",
        "column 'watts' (7): the cell is blank; a lamp with 'volts' needs 'watts' or 'amps'"
    )]
    [InlineData("rear,tail,,,,12,5,0.4,,,", "column 'amps' (8): '0.4' is given with watts '5'; remove one of the two")]
    [InlineData(
        "rear,tail,P21W,,,12,,,,,",
        "column 'volts' (6): '12' is given with the code 'P21W', which already gives it; remove one of the two"
    )]
    [InlineData(
        "rear,tail,P21W,led,,,,,,,",
        "column 'type' (4): 'led' is given with the code 'P21W', which is of type filament; remove one of the two"
    )]
    [InlineData(
        "rear,tail,P21X,,,,,,,,",
        "column 'code' (3): 'P21X' is not a known lamp code; expected a code of the lamp table, or no code but 'volts' "
            + "and 'watts'; did you mean 'P21W'?"
    )]
    [InlineData(
        "rear,tail,Zebra 77,,,,,,,,",
        "column 'code' (3): 'Zebra 77' is not a known lamp code; expected a code of the lamp table, or no code but "
            + "'volts' and 'watts'"
    )]
    [InlineData(
        "rear,tail,,led,,12,5,,12,,",
        "column 'minimum volts' (9): '12' is not below the rated voltage of the lamp; expected less than 12 V"
    )]
    [InlineData(
        "rear,tail,,,,12,5,,8,,",
        "column 'minimum volts' (9): '8' is given for a lamp of type filament; only led and led resistor have a "
            + "minimum voltage"
    )]
    [InlineData(
        "rear,tail,,,,12,5,,,lights,",
        "column 'lit when' (10): 'lights' is not a condition; expected switch=position or switch=position|position, "
            + "several joined by ';' where all must hold, by 'or' where one must"
    )]
    [InlineData(
        "rear,tail,,,,12,5,,,lights=low;lights=high,",
        "column 'lit when' (10): 'lights=low;lights=high' is not a condition; expected the switch 'lights' once, with "
            + "its positions joined by '|'"
    )]
    public void A_bad_cell_gives_one_message(string row, string message) =>
        Assert.Equal(
            [$"lamps.csv:2: {message}"],
            ListSamples.Faults(ListSamples.Of(("lamps.csv", Header + row + "\n")))
        );

    [Fact]
    public void A_lamp_of_two_filaments_needs_its_filament() =>
        Assert.Equal(
            [
                "lamps.csv:2: column 'code' (3): 'p21/5w' is a lamp of two filaments: two rows; write these two rows, "
                    + "each with its own 'lit when' or 'feed'",
            ],
            ListSamples.Faults(ListSamples.Of(("lamps.csv", Header + "rear,tail,p21/5w,,,,,,,,\n")))
        );

    [Fact]
    public void A_filament_that_a_lamp_does_not_have_is_answered_with_those_it_has() =>
        Assert.Equal(
            "'P21/5W stop' is not a known lamp code; expected a code of the lamp table, or no code but 'volts' and "
                + "'watts'; did you mean 'P21/5W major' or 'P21/5W minor'?",
            LampCodes.Explain("P21/5W stop").ToString()
        );

    [Fact]
    public void A_duplicate_lamp_names_both_lines() =>
        Assert.Equal(
            [
                "lamps.csv:4: column 'lamp' (2): 'TAIL' is the name of the lamp on line 2 already; give each its own "
                    + "name",
            ],
            ListSamples.Faults(
                ListSamples.Of(("lamps.csv", Header + "rear,tail,P21W,,,,,,,,\n\nrear,TAIL,P21W,,,,,,,,\n"))
            )
        );

    [Fact]
    public void A_bike_with_runs_needs_the_points_of_every_lamp() =>
        Assert.Equal(
            [
                "lamps.csv:2: column 'feed' (12): the cell is blank; a bike with runs.csv needs the points of every "
                    + "lamp",
                "lamps.csv:3: column 'return' (13): 'stop feed' is the feed as well; expected two different points",
            ],
            ListSamples
                .Faults(
                    ListSamples.WholeBut(
                        "lamps.csv",
                        ListSamples
                            .LampsCsv.Replace("dip feed,frame", ",frame", StringComparison.Ordinal)
                            .Replace("stop feed,frame", "stop feed,stop feed", StringComparison.Ordinal)
                    )
                )
                .Where(f => f.StartsWith("lamps.csv", StringComparison.Ordinal))
        );

    [Theory]
    [InlineData("battery+", "battery +")]
    [InlineData("Battery Plus", "battery +")]
    [InlineData("batt -", "battery -")]
    [InlineData("battry negative", "battery -")]
    [InlineData("+ battery", "battery +")]
    public void A_point_that_looks_like_a_battery_terminal_must_be_one(string point, string meant) =>
        Assert.Equal(
            [
                $"lamps.csv:2: column 'feed' (5): '{point}' is not how a battery terminal is written; expected "
                    + $"'battery +' or 'battery -'; did you mean '{meant}'?",
            ],
            ListSamples.Faults(
                ListSamples.Of(("lamps.csv", $"circuit,lamp,volts,watts,feed\nrear,tail,12,5,{point}\n"))
            )
        );

    [Fact]
    public void A_row_with_several_faults_gives_them_all_in_column_order() =>
        Assert.Equal(
            [
                "lamps.csv:2: column 'quantity' (5): 'two' is not a whole number from 1 to 1000",
                "lamps.csv:2: column 'watts' (7): '0' is out of range; expected 0.001 W to 2000 W",
                "lamps.csv:2: column 'duty' (11): '3' is out of range; expected 0 to 1",
            ],
            ListSamples.Faults(ListSamples.Of(("lamps.csv", Header + "rear,tail,,,two,12,0,,,,3\n")))
        );
}
