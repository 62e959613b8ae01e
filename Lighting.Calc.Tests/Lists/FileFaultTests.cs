using System.Text;

namespace Lighting.Calc.Tests.Lists;

/// <summary>Files that are no list at all, and headers and rows that are not whole.</summary>
public class FileFaultTests
{
    private const string LampColumns =
        "circuit, lamp, code, type, quantity, volts, watts, amps, minimum volts, lit when, duty, feed, return, allowed "
        + "drop, momentary, notes";

    [Theory]
    [InlineData("", "lamps.csv:1: the list is empty; the first line names the columns: " + LampColumns)]
    [InlineData("\n  \n,,,\n", "lamps.csv:1: the list is empty; the first line names the columns: " + LampColumns)]
    [InlineData("circuit,lamp,code\n", "lamps.csv:1: the list has no lamps; give each lamp a row below the header")]
    [InlineData(
        "rear,tail light,P21W\n",
        "lamps.csv:1: the header line is missing; the first line names the columns: " + LampColumns
    )]
    [InlineData(
        "circuit,lamp,wats\nrear,tail,5\n",
        "lamps.csv:1: 'wats' is not a column of this list; the columns are " + LampColumns + "; did you mean 'watts'?"
    )]
    [InlineData(
        "circuit,lamp,colour\nrear,tail,5\n",
        "lamps.csv:1: 'colour' is not a column of this list; the columns are " + LampColumns
    )]
    [InlineData(
        "\ncircuit,lamp,volts,Watts,watts\nrear,tail,12,5,5\n",
        "lamps.csv:2: 'watts' names column 5 and column 4; keep one of the two"
    )]
    [InlineData("lamp,code\ntail,P21W\n", "lamps.csv:1: the header lacks the column 'circuit'")]
    [InlineData("code,volts\nP21W,\n", "lamps.csv:1: the header lacks the columns 'circuit', 'lamp'")]
    [InlineData(
        "circuit,lamp;code\nrear,tail;P21W\n",
        "lamps.csv:1: the header line holds commas and semicolons; use one separator throughout: comma, semicolon or "
            + "tab"
    )]
    [InlineData("circuit,lamp,code\nrear,tail\n", "lamps.csv:2: the row has 2 cells, the header 3")]
    [InlineData(
        "circuit,lamp,volts,watts\n\nrear,tail,12,55,0\n",
        "lamps.csv:3: the row has 5 cells, the header 4; quote a cell that holds commas; "
            + "if '12,55' is one number, write 12.55"
    )]
    [InlineData(
        "circuit;lamp;code;lit when\nrear;tail;P21W;lights=low; brake=on\n",
        "lamps.csv:2: the row has 5 cells, the header 4; quote a cell that holds semicolons"
    )]
    [InlineData(
        "circuit,lamp,code\nrear,ta\"il,P21W\n",
        "lamps.csv:2: a double quote stands inside a cell that is not quoted; put the whole cell in double quotes and "
            + "double each quote inside it"
    )]
    [InlineData(
        "circuit,lamp,code\nrear,\"tail\"x,P21W\n",
        "lamps.csv:2: text follows the closing quote of a cell; put the whole cell in double quotes and double each "
            + "quote inside it"
    )]
    [InlineData(
        "circuit,lamp,code\nrear,tail,P21W\nrear,\"stop,P21W\nrear,x,P21W\n",
        "lamps.csv:3: a quoted cell that starts in this row is never closed; put the whole cell in double quotes and "
            + "double each quote inside it"
    )]
    [InlineData(
        "circuit,\"lamp,code\nrear,tail,P21W\n",
        "lamps.csv:1: a quoted cell that starts in this row is never closed; put the whole cell in double quotes and "
            + "double each quote inside it"
    )]
    [InlineData(
        "circuit,lamp,code,\nrear,tail,P21W,note\n",
        "lamps.csv:2: column '' (4): 'note' stands under a column that has no name"
    )]
    [InlineData(
        "circuit,lamp,code\nrear,\u001b[31mtail,P21W\n",
        "lamps.csv:2: column 'lamp' (2): '\\u001B[31mtail' holds a character that cannot be seen"
    )]
    [InlineData(
        "circuit,lamp,code\nrear,tail\0,P21W\n",
        "lamps.csv:2: the list is a binary file, not text: it holds a NUL byte; save it as CSV UTF-8"
    )]
    public void A_file_that_is_not_a_list_gives_one_message(string text, string message) =>
        Assert.Equal([message], ListSamples.Faults(ListSamples.Of(("lamps.csv", text))));

    [Fact]
    public void Latin_1_bytes_are_not_UTF_8() =>
        Assert.Equal(
            ["lamps.csv:3: the list is not UTF-8 from here on; save it as CSV UTF-8"],
            Bytes(Encoding.Latin1.GetBytes("circuit,lamp,code\nrear,tail,P21W\nrear,côté,P21W\n"))
        );

    [Fact]
    public void UTF_16_is_named_as_such() =>
        Assert.Equal(
            ["lamps.csv:1: the list is not UTF-8 but UTF-16; save it as CSV UTF-8"],
            Bytes([.. Encoding.Unicode.Preamble, .. Encoding.Unicode.GetBytes("circuit,lamp,code\n")])
        );

    [Fact]
    public void A_list_one_byte_over_the_limit_is_refused_and_one_at_it_is_read()
    {
        byte[] atLimit =
        [
            .. Encoding.UTF8.GetBytes("circuit,lamp,code\nrear,tail,P21W\n"),
            .. Enumerable.Repeat((byte)'\n', ListLimits.Bytes - 33),
        ];
        Assert.Equal(ListLimits.Bytes, atLimit.Length);
        Assert.Empty(Bytes(atLimit));
        Assert.Equal(["lamps.csv: is larger than 4 MiB, the limit of a list"], Bytes([.. atLimit, (byte)'\n']));
    }

    [Fact]
    public void Too_many_rows_are_refused()
    {
        string rows = string.Concat(Enumerable.Range(1, ListLimits.Rows + 1).Select(i => $"rear,tail {i},P21W\n"));
        Assert.Contains(
            $"lamps.csv:{ListLimits.Rows + 2}: the list has more than 10000 rows",
            ListSamples.Faults(ListSamples.Of(("lamps.csv", "circuit,lamp,code\n" + rows)))
        );
    }

    [Fact]
    public void A_cell_beyond_the_limit_is_refused_and_shown_short() =>
        Assert.Equal(
            [$"lamps.csv:2: column 'lamp' (2): '{new string('x', 60)}…' is longer than 500 characters"],
            ListSamples.Faults(ListSamples.Of(("lamps.csv", $"circuit,lamp,code\nrear,{new string('x', 501)},P21W\n")))
        );

    [Fact]
    public void The_line_is_the_files_own_after_blank_lines_and_line_breaks_in_quotes() =>
        Assert.Equal(
            ["lamps.csv:6: column 'watts' (4): 'x' is not a number of watts; expected a number such as 1 W"],
            ListSamples.Faults(
                ListSamples.Of(
                    (
                        "lamps.csv",
                        "circuit,lamp,volts,watts\r\n\r\nrear,\"tail\r\nlamp\",12,5\r\n,,,\r\nrear,stop,12,x\r\n"
                    )
                )
            )
        );

    [Fact]
    public void A_line_break_in_a_name_reads_as_a_space() =>
        Assert.Equal(
            "tail lamp",
            ListSamples.LampsOnly("circuit,lamp,volts,watts\nrear,\"tail\r\n  lamp\",12,5\n").Lamps[0].Lamp
        );

    [Fact]
    public void A_byte_order_mark_before_a_blank_line_does_not_matter() =>
        Assert.Empty(
            Bytes([.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes("\n\ncircuit,lamp,code\nrear,tail,P21W\n")])
        );

    [Fact]
    public void A_bike_needs_its_lamps() =>
        Assert.Equal(
            ["lamps.csv: the list is missing; a bike needs at least its lamps"],
            ListSamples.Faults(ListSamples.Of(("bike.csv", ListSamples.BikeCsv)))
        );

    [Fact]
    public void A_list_of_another_name_is_a_caution() =>
        Assert.Equal(
            [
                "lamp.csv: is not a list of a bike and was not read; the lists are bike.csv, lamps.csv, runs.csv, "
                    + "switches.csv, fuses.csv, relays.csv, charging.csv, ride.csv, swaps.csv, readings.csv, "
                    + "prices.csv; did you mean 'lamps.csv'?",
            ],
            ListSamples.Cautions(ListSamples.Whole.With("lamp.csv", "anything"))
        );

    private static string[] Bytes(byte[] bytes) => ListSamples.Faults(ListSource.Empty.With("lamps.csv", bytes));

    // Neither missing besides, nor missed by the lists that need runs.
    [Fact]
    public void A_misspelt_heading_is_one_fault()
    {
        ListResult<BikeLists> lists = BikeLists.Read(
            ListSource
                .Empty.With("bike.csv", "item,value\ngenerator joins at,ammeter\n")
                .With("lamps.csv", "circuit,lamp,watts,feed,return\nhead,headlamp,45,lamp feed,frame\n")
                .With("runs.csv", "run,from,to,wire,lenght\nlead,battery +,ammeter,2 mm2,1\n")
                .With("relays.csv", "relay,coil from,coil to,from,to\nhorn relay,ammeter,frame,ammeter,lamp feed\n")
        );
        Assert.Contains("did you mean 'length'?", Assert.Single(lists.Faults).Message, StringComparison.Ordinal);
        Assert.DoesNotContain(lists.Cautions, c => c.Message.Contains("is not used", StringComparison.Ordinal));
    }

}
