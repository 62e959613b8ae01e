namespace Lighting.Calc.Tests.Lists;

/// <summary>All faults of a folder come at once, in file and line order, and one fault does not make others
/// up.</summary>
public class AllFaultsTests
{
    [Fact]
    public void Faults_of_all_lists_come_at_once_in_file_and_line_order()
    {
        ListSource source = ListSamples.Of(
            ("swaps.csv", "lamp,new code\nlampp,P21X\n"),
            ("lamps.csv", "circuit,lamp,volts,watts,lit when\nrear,lamp,12,0,\nrear,other,12,5,lights=lwo\n"),
            ("switches.csv", "switch,from,to,closed in\nlights,a,b,low\n"),
            ("bike.csv", "item,value\nearth,up\n"),
            ("ride.csv", "stretch,rpm\n")
        );
        Assert.Equal(
            [
                "bike.csv:2: column 'value' (2): 'up' is not an earth; expected negative or positive",
                "lamps.csv:2: column 'watts' (4): '0' is out of range; expected 0.001 W to 2000 W",
                "lamps.csv:3: column 'lit when' (5): 'lwo' is not a position of the switch 'lights'; its positions are "
                    + "off, low; did you mean 'low'?",
                "ride.csv:1: the header lacks the column 'minutes'",
                "swaps.csv:2: column 'lamp' (1): 'lampp' is not a lamp of the bike; did you mean 'lamp'?",
                "swaps.csv:2: column 'new code' (2): 'P21X' is not a known lamp code; expected a code of the lamp "
                    + "table, or no code but 'volts' and 'watts'; did you mean 'P21W'?",
            ],
            ListSamples.Faults(source)
        );
    }

    [Fact]
    public void A_faulty_lamp_is_still_known_to_the_lists_that_name_it() =>
        Assert.Equal(
            ["lamps.csv:3: column 'duty' (11): '7' is out of range; expected 0 to 1"],
            ListSamples.Faults(
                ListSamples.WholeBut(
                    "lamps.csv",
                    ListSamples.LampsCsv.Replace(",0.2,", ",7,", StringComparison.Ordinal)
                )
            )
        );

    [Fact]
    public void A_row_that_cannot_be_split_makes_no_faults_in_other_lists() =>
        Assert.Equal(
            ["lamps.csv:3: the row has 14 cells, the header 13; quote a cell that holds commas"],
            ListSamples.Faults(
                ListSamples.WholeBut(
                    "lamps.csv",
                    ListSamples.LampsCsv.Replace("brake=on", "brake,=on", StringComparison.Ordinal)
                )
            )
        );

    [Theory]
    [InlineData("runs.csv")]
    [InlineData("switches.csv")]
    [InlineData("fuses.csv")]
    [InlineData("lamps.csv")]
    public void A_list_without_a_header_makes_no_faults_in_other_lists(string name) =>
        Assert.StartsWith(
            $"{name}:1: the header line is missing",
            Assert.Single(ListSamples.Faults(ListSamples.WholeBut(name, "7,8\n"))),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_result_with_faults_has_no_value_and_says_all_when_asked_for_it()
    {
        ListResult<BikeLists> result = BikeLists.Read(
            ListSamples.Of(("lamps.csv", "circuit,lamp,volts,watts\nrear,tail,12,0\nrear,stop,x,5\n"))
        );
        Assert.False(result.Succeeded);
        Assert.False(result.TryGetValue(out _));
        ListException exception = Assert.Throws<ListException>(() => result.Value);
        Assert.Equal(result.Faults, exception.Faults);
        Assert.Equal(
            "lamps.csv:2: column 'watts' (4): '0' is out of range; expected 0.001 W to 2000 W\nlamps.csv:3: column "
                + "'volts' (3): 'x' is not a number of volts; expected a number such as 1 V",
            exception.Message
        );
    }

    [Fact]
    public void A_fault_gives_its_parts()
    {
        ListFault fault = BikeLists
            .Read(ListSamples.Of(("lamps.csv", "circuit,lamp,code\nrear,tail,P21X\n")))
            .Faults.Single();
        Assert.Equal(
            ("lamps.csv", 2, 3, "code", "P21X", "is not a known lamp code"),
            (fault.File, fault.Line, fault.ColumnNumber, fault.ColumnName, fault.Text, fault.Problem)
        );
        Assert.Equal(["P21W"], fault.Nearest);
        Assert.Equal(fault.Message, fault.ToString());
        Assert.Equal(fault, fault with { });
        Assert.NotEqual(fault, fault with { Line = 3 });
    }

    [Fact]
    public void A_result_is_a_value_or_faults() =>
        Assert.Throws<ArgumentException>(() => new ListResult<string>(null, [], []));
}
