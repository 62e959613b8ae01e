using System.Text;

namespace Lighting.Calc.Tests.Lists;

/// <summary>Lists as people have them: without volts, with remarks, from a spreadsheet, with watts and lamps in
/// people's words.</summary>
public class EverydayListTests
{
    private const string SixVolts = "item,value\nsystem voltage,6\n";

    // By hand: 24 W at 6 V is 4 A; at 12 V 2 A.
    [Theory]
    [InlineData("6", 4)]
    [InlineData("12", 2)]
    public void Volts_of_a_lamp_are_the_system_voltage_unless_stated(string volts, double amperes)
    {
        Bike bike = BikeLists
            .Read(
                ListSamples.Of(
                    ("bike.csv", $"item,value\nsystem voltage,{volts}\n"),
                    ("lamps.csv", "circuit,lamp,watts,volts\nhead,headlamp,24,\nhead,other,24,8\n")
                )
            )
            .Value.Bike;
        Assert.Equal(amperes, bike.Lamps[0].Specification.ReferenceCurrent.Amperes, 1e-12);
        Assert.Equal(3, bike.Lamps[1].Specification.ReferenceCurrent.Amperes, 1e-12);
    }

    [Theory]
    [InlineData("circuit,lamp,watts\nhead,pilot,4\n", "lamps.csv:2: the list has no column 'volts': ")]
    [InlineData("circuit,lamp,volts,amps\nhead,a,12,1\nhead,b,,2\n", "lamps.csv:3: column 'volts' (3): ")]
    public void A_system_voltage_that_no_list_states_is_a_caution(string lamps, string place)
    {
        ListResult<BikeLists> read = BikeLists.Read(ListSamples.Of(("lamps.csv", lamps)));
        Assert.True(read.Succeeded);
        Assert.Equal(
            [
                $"{place}12 V is assumed, since bike.csv states no 'system voltage'; state it: at 6 V the same watts "
                    + "are twice the current",
            ],
            read.Cautions.Select(c => c.Message)
        );
        ListSource stated = ListSamples.Of(("lamps.csv", lamps), ("bike.csv", SixVolts));
        Assert.DoesNotContain(ListSamples.Cautions(stated), c => c.Contains("assumed", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_list_may_have_remarks_which_are_kept()
    {
        ListSource source = ListSource.Empty;
        foreach ((string name, string text) in ListSamples.Texts())
        {
            string[] lines = text.TrimEnd().Split('\n');
            IEnumerable<string> noted = lines.Skip(1).Select((l, i) => $"{l},\"{name} row {i + 1}, =seen\"");
            source = source.With(name, string.Join('\n', noted.Prepend($"{lines[0]},Notes")));
        }

        BikeLists lists = BikeLists.Read(source).Value,
            plain = BikeLists.Read(ListSamples.Whole).Value;
        Assert.Equal("lamps.csv row 2, =seen", lists.Bike.Lamps[1].Notes);
        Assert.Equal("bike.csv row 4, =seen", lists.ItemNotes["EARTH"]);
        Assert.Equal(plain.Bike.Lamps, lists.Bike.Lamps.Select(l => l with { Notes = null }));
        IReadOnlyDictionary<string, string> written = BikeListsWriter.Write(lists);
        foreach ((string name, string text) in ListSamples.Texts())
            Assert.Equal(
                text.TrimEnd().Split('\n').Length - (name == "readings.csv" ? 2 : 1),
                written[name].Split('\n').Count(l => l.Contains(" row ", StringComparison.Ordinal))
            );
        ListSource again = written.Aggregate(ListSource.Empty, (s, l) => s.With(l.Key, l.Value));
        SameLists.Assert(lists, BikeLists.Read(again).Value);
    }

    [Theory]
    [InlineData("sep=;\ncircuit;lamp;watts\nhead;a, b;24\n")]
    [InlineData("SEP=;\r\ncircuit;lamp;watts\r\nhead;a, b;24\r\n")]
    [InlineData("\"sep=;\"\ncircuit;lamp;watts\nhead;a, b;24\n")]
    [InlineData("sep=;;;\n\ncircuit;lamp;watts\nhead;a, b;24\n")]
    [InlineData("sep=\t\ncircuit\tlamp\twatts\nhead\ta, b\t24\n")]
    [InlineData("sep=,\ncircuit,lamp,watts\nhead,\"a, b\",24\n")]
    public void The_separator_that_a_spreadsheet_declares_is_used(string text)
    {
        BikeLists lists = BikeLists.Read(ListSamples.Of(("lamps.csv", text), ("bike.csv", SixVolts))).Value;
        Assert.Equal("a, b", Assert.Single(lists.Bike.Lamps).Lamp);
        byte[] marked = [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(text)];
        Assert.Single(BikeLists.Read(ListSource.Empty.With("lamps.csv", marked)).Value.Bike.Lamps);
    }

    [Theory]
    [InlineData(
        "sep=;\ncircuit,lamp,watts\n",
        "lamps.csv:2: the header line is not separated as the line above it says, sep=;; use comma, semicolon or "
            + "tab throughout, or remove that line"
    )]
    [InlineData(
        "sep=|\ncircuit|lamp|watts\n",
        "lamps.csv:2: the header line is not separated as the line above it says, sep=|; use comma, semicolon or "
            + "tab throughout, or remove that line"
    )]
    [InlineData(
        "sep=;\ncircuit;lamp;watts\nhead;a;5 X\n",
        "lamps.csv:3: column 'watts' (3): '5 X' has an unknown unit; expected W, mW or kW"
    )]
    public void A_declared_separator_changes_no_line_number(string text, string message) =>
        Assert.Equal([message], ListSamples.Faults(ListSamples.Of(("lamps.csv", text), ("bike.csv", SixVolts))));

    [Fact]
    public void A_list_of_a_declared_separator_alone_is_empty() =>
        Assert.StartsWith(
            "lamps.csv:1: the list is empty",
            Assert.Single(ListSamples.Faults(ListSamples.Of(("lamps.csv", "sep=;\n")))),
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("100/90")]
    [InlineData("45W / 40W")]
    public void Watts_of_two_filaments_are_answered_with_the_two_rows(string watts)
    {
        ListFault fault = Assert.Single(
            FaultsOf($"circuit,lamp,volts,watts\nhead lamp,headlamp,12,{watts}\n")
        );
        Assert.Equal(
            $"lamps.csv:2: column 'watts' (4): '{watts}' is the watts of two filaments: two rows; write these two rows"
                + ", each with its own 'lit when' or 'feed'",
            fault.Message
        );
        Bike pasted = ListSamples.LampsOnly($"circuit,lamp,volts,watts\n{string.Join('\n', fault.Rows)}\n");
        Assert.Equal(["headlamp high", "headlamp low"], pasted.Lamps.Select(l => l.Lamp));
        Assert.Equal(
            watts.Split('/').Select(Power),
            pasted.Lamps.Select(l => (double)l.Specification.ReferencePower.Watts)
        );

        static double Power(string text) => (double)QuantityText.Power.Parse(text).Watts;
    }

    [Fact]
    public void The_rows_are_in_the_form_of_their_list()
    {
        ListFault fault = Assert.Single(
            FaultsOf("watts;lamp;circuit;lit when\n21/5;rear lamp;'=rear;lights=on\n")
        );
        Assert.Equal(["21;stop lamp;'=rear;lights=on", "5;tail lamp;'=rear;lights=on"], fault.Rows);
    }

    [Fact]
    public void Watts_of_two_filaments_in_a_swap_are_refused_without_rows()
    {
        ListFault fault = Assert.Single(
            BikeLists
                .Read(
                    ListSamples.Of(
                        ("lamps.csv", "circuit,lamp,code\nrear,stop,P21W\n"),
                        ("swaps.csv", "lamp,type,watts\nstop,led,21/5\n")
                    )
                )
                .Faults
        );
        Assert.EndsWith("two rows; write a row for the lamp of each filament", fault.Message, StringComparison.Ordinal);
        Assert.Empty(fault.Rows);
    }

    [Theory]
    [InlineData("stop 21W", 12, "P21W")]
    [InlineData("brake lamp 21 W", 12, "P21W")]
    [InlineData("Turn signal bulb 21 watts", 12, "P21W")]
    [InlineData("tail 5W", 12, "R5W")]
    [InlineData("pilot 4W", 12, "T4W")]
    [InlineData("parking light 4 W MCC", 6, "T4W")]
    [InlineData("number plate 5W festoon", 12, "C5W")]
    [InlineData("stop 21/5", 12, "P21/5W major")]
    [InlineData("tail 5/21", 6, "P21/5W minor")]
    [InlineData("headlamp 60/55 low", 12, "H4 low")]
    [InlineData("H4 main beam", 12, "H4 high")]
    [InlineData("headlight 45/40 dipped P45t", 6, "R2 low")]
    [InlineData("stop 1157 major", 12, "1157 major")]
    [InlineData("12V 55W headlamp H1", 12, "H1")]
    public void A_lamp_is_found_by_the_words_that_people_use(string words, double system, string code)
    {
        BikeLists lists = BikeLists
            .Read(
                ListSamples.Of(
                    ("bike.csv", $"item,value\nsystem voltage,{system}\n"),
                    ("lamps.csv", $"circuit,lamp,code\nrear,lamp,{words}\n")
                )
            )
            .Value;
        Assert.Equal(code, lists.Bike.Lamps[0].Specification.Code);
        Assert.Contains($",{code},", BikeListsWriter.Write(lists)["lamps.csv"], StringComparison.Ordinal);
    }

    [Fact]
    public void Words_for_both_filaments_are_answered_with_the_two_rows()
    {
        ListFault fault = Assert.Single(
            FaultsOf("circuit,lamp,code\nrear,rear lamp,stop and tail 21/5\n")
        );
        Assert.Equal(
            "lamps.csv:2: column 'code' (3): 'stop and tail 21/5' is a lamp of two filaments: two rows; write these "
                + "two rows, each with its own 'lit when' or 'feed'",
            fault.Message
        );
        Assert.Equal(["rear,stop lamp,P21/5W major", "rear,tail lamp,P21/5W minor"], fault.Rows);
    }

    [Theory]
    [InlineData("headlamp 35/35", "may be one of several lamps; name its code, or its cap or filament as well; did ")]
    [InlineData("stop lamp", "is not a known lamp code")]
    [InlineData("21W", "is not a known lamp code")]
    [InlineData("stop 23W", "is not a known lamp code")]
    [InlineData("stop 21W purple", "is not a known lamp code")]
    public void Words_that_mean_no_one_lamp_are_refused(string words, string problem) =>
        Assert.StartsWith(
            $"lamps.csv:2: column 'code' (3): '{words}' {problem}",
            Assert.Single(FaultsOf($"circuit,lamp,code\nrear,lamp,{words}\n")).Message,
            StringComparison.Ordinal
        );

    // Names of every kind in other letters: of lists, columns, words, codes, lamps, points, switches and positions.
    [Fact]
    public void Names_ignore_case()
    {
        BikeLists other = BikeLists
            .Read(
                ListSamples
                    .Texts()
                    .Aggregate(ListSource.Empty, (s, l) => s.With(l.Name.ToUpperInvariant(), Swapped(l.Name, l.Text)))
            )
            .Value;
        Bike bike = BikeLists.Read(ListSamples.Whole).Value.Bike;
        Assert.Equal(bike.Lamps.Length, other.Bike.Lamps.Length);
        Assert.Equal(bike.Lamps.Select(l => l.Specification), other.Bike.Lamps.Select(l => l.Specification));
        Assert.Equal(
            bike.Lamps.Select(l => l.LitWhen.ToString()),
            other.Bike.Lamps.Select(l => l.LitWhen.ToString()),
            StringComparer.OrdinalIgnoreCase
        );
        Assert.Equal(
            SettingEnumeration.Count(bike, Condition.Always),
            SettingEnumeration.Count(other.Bike, Condition.Always)
        );
        Assert.Equal(Verdicts(bike), Verdicts(other.Bike));

        static IEnumerable<FuseVerdict> Verdicts(Bike bike) =>
            BikeCheck.Evaluate(bike, null, TestContext.Current.CancellationToken).Fuses.Select(f => f.Verdict);

        // Words and names in capitals in every second list; units stay as they are.
        static string Swapped(string name, string text) =>
            name switch
            {
                "runs.csv" => text.Replace("main in", "MAIN IN", StringComparison.Ordinal)
                    .Replace("frame,", "Frame,", StringComparison.Ordinal)
                    .Replace("run,", "RUN,", StringComparison.Ordinal),
                "lamps.csv" => text.Replace("lights=low", "Lights=LOW", StringComparison.Ordinal)
                    .Replace("P21W", "p21w", StringComparison.Ordinal)
                    .Replace("filament", "Filament", StringComparison.Ordinal),
                "switches.csv" => text.Replace("brake", "BRAKE", StringComparison.Ordinal),
                "fuses.csv" => text.Replace("glass", "GLASS", StringComparison.Ordinal),
                "swaps.csv" => text.Replace("stop", "STOP", StringComparison.Ordinal),
                "readings.csv" => text.Replace("dip feed", "Dip Feed", StringComparison.Ordinal),
                _ => text,
            };
    }

    private static IEnumerable<ListFault> FaultsOf(string lamps) =>
        BikeLists.Read(ListSamples.Of(("lamps.csv", lamps))).Faults;
}
