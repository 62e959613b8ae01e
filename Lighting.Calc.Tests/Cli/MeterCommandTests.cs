using System.Text.Json.Nodes;

namespace Lighting.Calc.Tests.Cli;

/// <summary><c>readings</c> and <c>faults</c> as a mechanic types them.</summary>
public class MeterCommandTests
{
    [Theory]
    [InlineData("fell-lightweight")]
    [InlineData("chapel-single", Traits = ["time", "long"])]
    [InlineData("valley-twin", Traits = ["time", "long"])]
    public async Task The_list_to_fill_in_is_read_back_blank_and_filled_in(string bike)
    {
        using var folder = new TemporaryFolder();
        string blank = await Run("readings", bike, "--format", "csv");
        CliResult nothing = await InProcess.Run("faults", CliProcess.Bike(bike), folder.Write("blank.csv", blank));
        Assert.Equal(0, nothing.ExitCode);
        Assert.Contains("No readings yet", nothing.Output, StringComparison.Ordinal);

        JsonNode expected = JsonNode.Parse(await Run("readings", bike, "--format", "json"))!;
        CliResult filled = await InProcess.Run(
            "faults",
            CliProcess.Bike(bike),
            folder.Write("filled.csv", FilledIn(blank, expected)),
            "--format",
            "json"
        );
        Assert.Empty(filled.Errors);
        Assert.Equal(0, filled.ExitCode);
        JsonNode answer = JsonNode.Parse(filled.Output)!;
        Assert.StartsWith(
            "No fault found: all readings are normal",
            (string?)answer["summary"],
            StringComparison.Ordinal
        );
        Assert.True((bool)answer["nothingFound"]!);
        Assert.Equal(blank.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length - 1, (int)answer["readings"]!);
    }

    [Fact]
    public async Task The_sheet_has_a_blank_for_every_point_the_fuse_and_every_part()
    {
        JsonNode expected = JsonNode.Parse(await Run("readings", "valley-twin", "--format", "json"))!;
        int rows =
            expected["settings"]!.AsArray().Sum(s => s!["points"]!.AsArray().Count + s["fuses"]!.AsArray().Count)
            + expected["ohms"]!.AsArray().Count
            + expected["jumpers"]!.AsArray().Count
            + 1; // the drain
        string sheet = await Run("readings", "valley-twin");
        Assert.Equal(rows, sheet.Split("________").Length - 1);
        Assert.Contains("Ammeter in place of the main fuse: ", sheet, StringComparison.Ordinal);
        Assert.Contains("Resistance, battery disconnected, everything off", sheet, StringComparison.Ordinal);
        Assert.All(sheet.Split('\n'), line => Assert.True(line.Length <= 80, line));
        // The tail lamp cold: 5 W at 13.5 V over 12, alone; its wire below what a meter tells from its leads.
        Assert.Matches(@"\n tail lamp +1\.4 Ω +2\.5 Ω  ____", sheet);
        Assert.Matches(@"\n rear earth +under 0\.1 Ω +under 0\.1 Ω  ____", sheet);
    }

    [Fact]
    public async Task A_condition_keeps_the_sheet_and_the_next_test_to_its_settings()
    {
        Assert.Equal(
            ["Switches: ignition=on; dip=low; brake=on"],
            (
                await Run(
                    "readings",
                    "valley-twin",
                    "--when",
                    "ignition=on; lights=off; brake=on; indicators=off; dip=low"
                )
            )
                .Split('\n')
                .Where(l => l.StartsWith("Switches", StringComparison.Ordinal))
        );
        Assert.Contains(
            "\"ignition\": \"off\"",
            (await Run("faults", "valley-twin", "--when", "ignition=off", "--format", "json")).Replace(
                "\":\"",
                "\": \"",
                StringComparison.Ordinal
            ),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_supply_that_is_given_is_the_one_the_sheet_is_for()
    {
        Assert.Contains(
            "\n battery +           12.65 ",
            await Run("readings", "valley-twin"),
            StringComparison.Ordinal
        );
        string running = await Run("readings", "valley-twin", "--engine", "running");
        Assert.Contains("\n battery +           13.80 ", running, StringComparison.Ordinal);
        Assert.Contains("engine at 3000 rpm", running, StringComparison.Ordinal);
        Assert.Contains(
            "\n battery +           12.20 ",
            await Run("readings", "valley-twin", "--volts", "12.2"),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_lighting_coil_is_read_at_an_engine_speed_that_the_output_states()
    {
        string slow = await Run("readings", "fell-lightweight"),
            fast = await Run("readings", "fell-lightweight", "--rpm", "3000");
        Assert.Contains("1500 rpm", slow, StringComparison.Ordinal);
        Assert.Contains("AC voltage", slow, StringComparison.Ordinal);
        Assert.Contains("3000 rpm", fast, StringComparison.Ordinal);
        Assert.DoesNotContain(" -0.", slow, StringComparison.Ordinal);
        JsonNode answer = JsonNode.Parse(await Run("faults", "fell-lightweight", "--rpm", "3000", "--format", "json"))!;
        Assert.Equal(3000, (double)answer["engineRpm"]!);
        Assert.StartsWith(
            "engine at 3000 rpm, with ",
            (string?)answer["nextTest"]!["instruction"],
            StringComparison.Ordinal
        );
        Assert.Contains(
            "is outside the charging list",
            (await Run("readings", "fell-lightweight", "--rpm", "9000")).ReplaceLineEndings(" "),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("--rpm goes with --engine running", "readings", "shared/bikes/valley-twin", "--rpm", "2000")]
    [InlineData(
        "9000 rpm is outside the charging list, which states the output from 1000 to 7000 rpm",
        "faults",
        "shared/bikes/valley-twin",
        "--engine",
        "running",
        "--rpm",
        "9000"
    )]
    [InlineData(
        "--rpm and --volts exclude each other",
        "readings",
        "shared/bikes/valley-twin",
        "--engine",
        "running",
        "--rpm",
        "3000",
        "--volts",
        "13"
    )]
    [InlineData("--volts and --engine go with a battery", "readings", "shared/bikes/fell-lightweight", "--volts", "6")]
    [InlineData("--volts and --engine go with a battery", "faults", "shared/bikes/fell-lightweight", "--engine", "off")]
    [InlineData(
        "'fast' is not a number of revolutions per minute",
        "faults",
        "shared/bikes/fell-lightweight",
        "--rpm",
        "fast"
    )]
    [InlineData("--rpm: '0' is out of range", "readings", "shared/bikes/fell-lightweight", "--rpm", "0")]
    [InlineData("there is no such file", "faults", "shared/bikes/valley-twin", "--priors", "none.csv")]
    [InlineData(
        "The bike has no lamp 'tial lamp'; did you mean 'tail lamp'",
        "faults",
        "shared/bikes/valley-twin",
        "--symptom",
        "tial lamp dark"
    )]
    [InlineData("no switch 'lihgts'", "faults", "shared/bikes/valley-twin", "--symptom", "lihgts=park: tail lamp dark")]
    public async Task What_makes_no_sense_is_refused_as_wrong_input(string message, params string[] words)
    {
        CliResult result = await InProcess.Run(words);
        Assert.Equal(2, result.ExitCode);
        Assert.Contains(message, result.Errors, StringComparison.Ordinal);
        Assert.Empty(result.Output);
    }

    [Theory]
    [InlineData(
        "tail feed,meter,15.2",
        "15.2 V at tail feed is above the battery voltage, 12.65 V",
        Traits = ["time", "long"]
    )]
    [InlineData("tail fed,meter,12", "'tail fed' is not a point of the bike; did you mean 'tail feed'?")]
    [InlineData("tail feed,meter,-3", "below zero. Connect the black lead to battery -", Traits = ["time", "long"])]
    [InlineData("tail lamp,visual,pink", "'pink' is not how a lamp looks")]
    public async Task A_reading_that_cannot_be_is_refused_in_plain_words(string row, string message)
    {
        using var folder = new TemporaryFolder();
        CliResult result = await InProcess.Run(
            "faults",
            CliProcess.Bike("valley-twin"),
            folder.Write("r.csv", $"when,point,instrument,reading\nignition=on; lights=park,{row}\n")
        );
        Assert.Equal(2, result.ExitCode);
        Assert.Contains(message, result.Errors, StringComparison.Ordinal);
    }

    [Fact]
    [Trait("time", "long")]
    public async Task Readings_that_contradict_each_other_are_left_out_with_a_caution()
    {
        using var folder = new TemporaryFolder();
        CliResult result = await InProcess.Run(
            "faults",
            CliProcess.Bike("valley-twin"),
            folder.Write(
                "r.csv",
                "when,point,instrument,reading\nignition=on; lights=park,tail feed,meter,12.1\nignition=on; "
                    + "lights=park,tail feed,meter,3.4\n"
            )
        );
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("12.1 V at tail feed and 3.4 V at tail feed", Flat(result.Output), StringComparison.Ordinal);
        Assert.Contains("The readings contradict each other", result.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Symptoms_of_several_lamps_and_settings_are_readings_together()
    {
        CliResult result = await InProcess.Run(
            "faults",
            CliProcess.Bike("valley-twin"),
            "--symptom",
            "lights=park; ignition=on: tail lamp dark, speedometer lamp good",
            "--symptom",
            "brake=on; ignition=on: stop lamp good",
            "--format",
            "json"
        );
        Assert.Equal(1, result.ExitCode);
        JsonNode answer = JsonNode.Parse(result.Output)!;
        Assert.Equal(3, (int)answer["readings"]!);
        // The ground and the way to both lamps are good: the lamp or its own wire.
        string[] first =
        [
            .. answer["faults"]!
                .AsArray()
                .Take(2)
                .Select(f => (string)f!["alternatives"]![0]!["faults"]![0]!["part"]!)
                .Order(StringComparer.Ordinal),
        ];
        Assert.Equal(["tail lamp", "tail wire"], first);
    }

    [Fact]
    [Trait("time", "long")]
    public async Task Own_priors_change_the_answer_and_what_is_not_given_stays()
    {
        using var folder = new TemporaryFolder();
        string own = folder.Write("own.csv", "fault,weight\nlamp dead,500\n");
        async Task<string> Likeliest(params string[] more) =>
            (string)
                JsonNode.Parse(
                    (
                        await InProcess.Run([
                            "faults",
                            CliProcess.Bike("valley-twin"),
                            "--symptom",
                            "tail lamp dark",
                            "--format",
                            "json",
                            .. more,
                        ])
                    ).Output
                )!["faults"]![0]!["alternatives"]![0]!["faults"]![0]!["kind"]!;
        Assert.NotEqual("LampDead", await Likeliest());
        Assert.Equal("LampDead", await Likeliest("--priors", own));
        string wrong = folder.Write(
            "wrong.csv",
            "fault,weight\nlampdead,5\nbattery flat,0\nground open,\"1,5\"\nlamp dead,5\nlamp dead,6\n"
        );
        CliResult refused = await InProcess.Run("faults", CliProcess.Bike("valley-twin"), "--priors", wrong);
        Assert.Equal(2, refused.ExitCode);
        Assert.Contains(
            "wrong.csv:2: column 'fault' (1): 'lampdead' is not a fault",
            refused.Errors,
            StringComparison.Ordinal
        );
        Assert.Contains("did you mean 'lamp dead'?", refused.Errors, StringComparison.Ordinal);
        Assert.Contains(
            "wrong.csv:3: column 'weight' (2): '0' is not a weight",
            refused.Errors,
            StringComparison.Ordinal
        );
        Assert.Contains("write a decimal point: 1.5", refused.Errors, StringComparison.Ordinal);
        Assert.Contains(
            "wrong.csv:6: column 'fault' (1): 'lamp dead' is the name of the fault on line 5 already",
            refused.Errors,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Without_readings_there_is_a_first_test_and_how_to_read()
    {
        CliResult result = await InProcess.Run("faults", CliProcess.Bike("chapel-single"));
        Assert.Equal(0, result.ExitCode);
        Assert.StartsWith(
            "Faults: Pinmoor Valley Post single No. 3\nNo readings yet: start with the first test.\n",
            result.Output,
            StringComparison.Ordinal
        );
        Assert.Contains("\nNext test\n\n! Live tests: ", result.Output, StringComparison.Ordinal);
        Assert.Contains(", normal", Flat(result.Output), StringComparison.Ordinal);
        Assert.Contains("The frame is battery +.", Flat(result.Output), StringComparison.Ordinal);
        // Nothing has been read, so that no resistance is said to be fitted.
        Assert.DoesNotContain("Ω,", result.Output, StringComparison.Ordinal);
        Assert.All(result.Output.Split('\n'), line => Assert.True(line.Length <= 80, line));
    }

    private static async Task<string> Run(string command, string bike, params string[] words)
    {
        CliResult result = await InProcess.Run([command, CliProcess.Bike(bike), .. words]);
        Assert.True(result.ExitCode == 0, result.Errors);
        return result.Output;
    }

    private static string Flat(string text) =>
        string.Join(' ', text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    // As a phone's spreadsheet would: the empty last cell of each row filled with what the sheet expects there.
    private static string FilledIn(string blank, JsonNode expected)
    {
        string[] lines = blank.ReplaceLineEndings("\n").Split('\n', StringSplitOptions.RemoveEmptyEntries);
        IEnumerable<string> filled = lines
            .Skip(1)
            .Select(line =>
            {
                string[] cells = line.Split(',');
                Assert.Equal(4, cells.Length);
                return line + Value(cells[0].Trim('"'), cells[1], cells[2], expected);
            });
        return string.Join('\n', filled.Prepend(lines[0])) + "\n";
    }

    private static string Value(string when, string point, string instrument, JsonNode expected)
    {
        if (instrument == "ohmmeter")
            return Named(expected["ohms"]!, "part", point)["inCircuitOhm"] is JsonValue ohms
                ? Text((double)ohms, 4)
                : "open";
        JsonNode setting = expected["settings"]!.AsArray().Single(s => When(s!["setting"]!) == when)!;
        return instrument switch
        {
            "meter" => Text((double)Named(setting["points"]!, "point", point)["voltageV"]!, 2),
            "test lamp" => (string)Named(setting["points"]!, "point", point)["testLamp"]!,
            "ammeter" => Text((double)Named(setting["fuses"]!, "fuse", point)["currentA"]!, 2),
            _ => (string)Named(setting["lamps"]!, "lamp", point)["seen"]!,
        };
    }

    private static JsonNode Named(JsonNode rows, string key, string name) =>
        rows.AsArray().Single(r => (string?)r![key] == name)!;

    private static string When(JsonNode setting) =>
        string.Join("; ", setting.AsObject().Where(p => (string?)p.Value != "off").Select(p => $"{p.Key}={p.Value}"));

    private static string Text(double value, int decimals) =>
        Math.Round(value, decimals)
            .ToString("0.####", System.Globalization.CultureInfo.InvariantCulture)
            .Replace("-0.00", "0", StringComparison.Ordinal);
}
