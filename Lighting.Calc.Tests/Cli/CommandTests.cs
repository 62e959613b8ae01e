using System.Text.Json;
using System.Text.RegularExpressions;

namespace Lighting.Calc.Tests.Cli;

/// <summary>The commands as a user types them.</summary>
public partial class CommandTests
{
    public static TheoryData<string> Commands =>
        [
            .. CommandLine()
                .Matches(CommandsOf(InProcess.Run("--help").GetAwaiter().GetResult().Output))
                .Select(m => new TheoryDataRow<string>(m.Groups[1].Value))
                .Select(r => r.Data == "faults" ? r.WithTrait("time", "long") : r),
        ];

    public static TheoryData<string> Bikes =>
        [
            .. Directory
                .GetDirectories(CliProcess.Bike(""))
                .Select(d => Path.GetFileName(d))
                .Order(StringComparer.Ordinal),
        ];

    [Fact]
    public void Help_lists_the_commands_of_the_design() =>
        Assert.Superset(
            new HashSet<string> { "check", "load", "fuse", "drop", "wire", "charging", "swap", "diagram", "tables" },
            new HashSet<string>(Commands.Select(c => c.Data))
        );

    [Theory]
    [MemberData(nameof(Commands))]
    public async Task Every_example_of_a_commands_help_works_as_typed(string command)
    {
        CliResult help = await InProcess.Run(command, "--help");
        Assert.Equal(0, help.ExitCode);
        MatchCollection examples = Example()
            .Matches(help.Output[help.Output.IndexOf("Example", StringComparison.Ordinal)..]);
        Assert.NotEmpty(examples);
        foreach (Match example in examples)
        {
            // What an example writes goes into a folder of its own.
            using var folder = new TemporaryFolder();
            string own = Path.Combine(folder.Path, "my-bike");
            string line = example.Groups[1].Value.Replace("my-bike", own, StringComparison.Ordinal);
            CliResult result = await InProcess.RunLine(line);
            Assert.True(result.ExitCode is 0 or 1, $"{example.Value}: exit {result.ExitCode}: {result.Errors}");
            Assert.NotEmpty(result.Output);
        }
    }

    [Theory]
    [MemberData(nameof(Bikes))]
    public async Task Text_fits_80_columns_and_has_no_colour_when_piped(string bike)
    {
        foreach (string command in new[] { "check", "load", "fuse", "drop" })
        {
            CliResult result = await InProcess.Run(command, CliProcess.Bike(bike));
            if (result.ExitCode == 2)
            {
                Assert.Equal(("fuse", "fell-lightweight"), (command, bike));
                Assert.Contains("lists no fuse", result.Errors, StringComparison.Ordinal);
                continue;
            }

            string output = result.Output;
            Assert.DoesNotContain('\u001b', output);
            Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 80, $"{line.Length}: {line}"));
            Assert.All(output.Split('\n'), line => Assert.Equal(line.TrimEnd(), line));
            Assert.Contains(
                "ask a licensed or qualified person.",
                output.Replace("\n  ", " ", StringComparison.Ordinal),
                StringComparison.Ordinal
            );
        }
    }

    [Theory]
    [MemberData(nameof(Bikes))]
    public async Task Load_and_check_as_JSON_have_the_keys_of_the_design(string bike)
    {
        using JsonDocument json = JsonDocument.Parse(
            (await InProcess.Run("load", CliProcess.Bike(bike), "--format", "json")).Output
        );
        JsonElement root = json.RootElement;
        Assert.Equal(1, root.GetProperty("schema").GetInt32());
        Assert.True(root.GetProperty("supplyVoltageV").GetDouble() > 5);
        foreach (JsonElement setting in root.GetProperty("settings").EnumerateArray())
        {
            double total = setting.GetProperty("totalCurrentA").GetDouble();
            Assert.Equal(
                total,
                setting.GetProperty("circuits").EnumerateArray().Sum(c => c.GetProperty("currentA").GetDouble()),
                1e-6
            );
            Assert.Equal(
                total,
                setting.GetProperty("lamps").EnumerateArray().Sum(c => c.GetProperty("currentA").GetDouble()),
                1e-6
            );
            Assert.Equal(["point", "voltageV"], Keys(setting.GetProperty("points")[0]));
            Assert.Equal(["circuit", "currentA", "powerW"], Keys(setting.GetProperty("circuits")[0]));
            Assert.Equal(
                ["lamp", "circuit", "quantity", "voltageV", "currentA", "powerW", "relativeLight", "dropPercent"],
                Keys(setting.GetProperty("lamps")[0])
            );
            Assert.Equal(["run", "currentA", "dropV", "resistanceOhm"], Keys(setting.GetProperty("runs")[0]));
            Assert.All(
                setting.GetProperty("fuses").EnumerateArray(),
                fuse => Assert.Equal(["fuse", "ratingA", "currentA", "headroomA"], Keys(fuse))
            );
        }

        using JsonDocument check = JsonDocument.Parse(
            (await InProcess.Run("check", CliProcess.Bike(bike), "--format", "json")).Output
        );
        root = check.RootElement;
        Assert.Equal(["severity", "kind", "subject", "message"], Keys(root.GetProperty("findings")[0]));
        if (bike == "fell-lightweight")
            return; // a lighting coil: nothing to fuse, no battery to balance
        Assert.Equal(
            [
                "fuse",
                "ratingA",
                "continuousCurrentA",
                "usableA",
                "continuousSetting",
                "worstCurrentA",
                "peakLimitA",
                "worstSetting",
                "worstRpm",
                "verdict",
                "smallestRatingA",
                "largestRatingA",
                "momentaryLoads",
                "reasons",
            ],
            Keys(root.GetProperty("fuses")[0])
        );
        Assert.Equal(
            ["demandA", "setting", "breakEvenRpm", "breakEven", "netAmpereHours"],
            Keys(root.GetProperty("charging"))
        );
    }

    [Fact]
    public async Task A_lone_lamps_list_with_a_fuse_option_is_enough_and_says_that_drops_are_not_included()
    {
        using var folder = new TemporaryFolder();
        string lamps = folder.Write("lamps.csv", "circuit,lamp,code\nstop,stop lamp,P21W\n");
        CliResult result = await InProcess.Run("check", lamps, "--fuse", "15A");
        Assert.Equal(0, result.ExitCode);
        Assert.StartsWith(
            "Check\n✔ Suits as far as listed. Not listed: wires, voltage drop, charging.\n15 A main: 0.00 A continuous "
                + "(limit 11.25 A), 1.85 A peak.\n",
            result.Output,
            StringComparison.Ordinal
        );
    }

    // By hand: a P21W is 25 W at 13.5 V, 1.852 A there; at 14.4 V it draws 1.852 · (14.4/13.5)^0.55 = 1.919 A.
    [Fact]
    public async Task Volts_and_engine_options_set_the_supply()
    {
        using var folder = new TemporaryFolder();
        string lamps = folder.Write("lamps.csv", "circuit,lamp,code\nstop,stop lamp,P21W\n");
        Assert.Equal(1.85185, await TotalAmps("load", lamps, "--format", "json"), 1e-5);
        Assert.Equal(1.91876, await TotalAmps("load", lamps, "--format", "json", "--volts", "14.4 V"), 1e-5);
        Assert.Equal(
            1.85185 * Math.Pow(12.65 / 13.5, 0.55),
            await TotalAmps("load", lamps, "--format", "json", "--engine", "off"),
            1e-5
        );
    }

    [Fact]
    public async Task A_condition_leaves_only_its_settings()
    {
        using JsonDocument json = JsonDocument.Parse(
            (
                await InProcess.Run(
                    "load",
                    CliProcess.Bike("valley-twin"),
                    "--when",
                    "lights=main; dip=low",
                    "--format",
                    "json"
                )
            ).Output
        );
        Assert.All(
            json.RootElement.GetProperty("settings").EnumerateArray(),
            s => Assert.Equal("low", s.GetProperty("setting").GetProperty("dip").GetString())
        );
    }

    [Fact]
    public async Task Csv_is_a_table_with_units_in_its_header()
    {
        string[] lines = (await InProcess.Run("fuse", CliProcess.Bike("valley-twin"), "--format", "csv")).Output.Split(
            "\r\n"
        );
        Assert.Equal(
            "fuse,ratingA,continuousCurrentA,usableA,continuousSetting,"
                + "worstCurrentA,peakLimitA,worstSetting,verdict,smallestRatingA,largestRatingA",
            lines[0]
        );
        Assert.StartsWith("main,15,", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_name_that_looks_like_a_formula_is_made_text_in_csv()
    {
        using var folder = new TemporaryFolder();
        string lamps = folder.Write("lamps.csv", "circuit,lamp,code\nstop,=1+1,P21W\n");
        Assert.Contains(
            "'=1+1",
            (await InProcess.Run("load", lamps, "--format", "csv")).Output,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task The_result_goes_whole_to_the_file_asked_for_and_replaces_an_earlier_one()
    {
        using var folder = new TemporaryFolder();
        string file = folder.Write("result.json", "earlier");
        CliResult result = await InProcess.Run(
            "check",
            CliProcess.Bike("valley-twin"),
            "--format",
            "json",
            "--out",
            file
        );
        Assert.Empty(result.Output);
        Assert.Equal(1, JsonDocument.Parse(File.ReadAllText(file)).RootElement.GetProperty("schema").GetInt32());
        Assert.Single(Directory.GetFiles(folder.Path));
    }

    [Fact]
    public async Task A_wrong_input_leaves_an_earlier_result_alone()
    {
        using var folder = new TemporaryFolder();
        string file = folder.Write("result.json", "earlier"),
            lamps = folder.Write("lamps.csv", "circuit,lamp,code\nstop,stop lamp,P21X\n");
        Assert.Equal(2, (await InProcess.Run("check", lamps, "--out", file)).ExitCode);
        Assert.Equal("earlier", File.ReadAllText(file));
    }

    [Fact]
    public async Task A_folder_that_does_not_exist_for_the_result_is_one_message()
    {
        CliResult result = await InProcess.Run("check", CliProcess.Bike("valley-twin"), "--out", "/nowhere/at/all.txt");
        Assert.Equal(2, result.ExitCode);
        Assert.StartsWith(
            "lighting-calc: --out '/nowhere/at/all.txt' cannot be written:",
            result.Errors,
            StringComparison.Ordinal
        );
        Assert.Single(result.Errors.TrimEnd().Split('\n'));
    }

    [Theory]
    [InlineData("--fuse", "15,5A", "--fuse: '15,5A'")]
    [InlineData("--fuse", "-5A", "--fuse: '-5A'")]
    [InlineData("--when", "lights", "--when 'lights' is not a condition")]
    [InlineData("--when", "lihgts=main", "names the switch 'lihgts'")]
    [InlineData("--volts", "twelve", "--volts: 'twelve'")]
    public async Task A_wrong_option_is_one_message_and_exit_2(string option, string value, string expected)
    {
        CliResult result = await InProcess.Run("check", CliProcess.Bike("valley-twin"), option, value);
        Assert.Equal(2, result.ExitCode);
        Assert.Empty(result.Output);
        Assert.Contains(expected, result.Errors, StringComparison.Ordinal);
        Assert.Single(result.Errors.TrimEnd().Split('\n'));
    }

    [Fact]
    public async Task All_faults_of_a_folder_are_reported_at_once()
    {
        using var folder = new TemporaryFolder();
        folder.Write("lamps.csv", "circuit,lamp,code,duty\nstop,stop lamp,P21X,1\ntail,tail lamp,R5W,3\n");
        folder.Write("fuses.csv", "fuse,from,to,rating\nmain,,,\"15,5 A\"\n");
        CliResult result = await InProcess.Run("check", folder.Path);
        Assert.Equal(2, result.ExitCode);
        Assert.Empty(result.Output);
        Assert.Contains("fuses.csv:2: column 'rating' (4): '15,5 A'", result.Errors, StringComparison.Ordinal);
        Assert.Contains("lamps.csv:2: column 'code' (3): 'P21X'", result.Errors, StringComparison.Ordinal);
        Assert.Contains("lamps.csv:3: column 'duty' (4): '3'", result.Errors, StringComparison.Ordinal);
    }

    // By hand: 18 AWG is 20.948 mΩ/m at 20 °C; 3.6 m there and back at 8 A lose 0.6033 V, 5.03 % of 12 V.
    [Fact]
    public async Task Drop_of_one_run_counts_there_and_back()
    {
        string output = (
            await InProcess.Run("drop", "--current", "8A", "--length", "1.8m", "--wire", "18AWG", "--volts", "12V")
        ).Output;
        Assert.StartsWith(
            "Voltage drop of one run\nVoltage drop 0.60 V, 5.0 % of 12.00 V.\n",
            output,
            StringComparison.Ordinal
        );
        output = (
            await InProcess.Run(
                "drop",
                "--current",
                "8A",
                "--length",
                "1.8m",
                "--wire",
                "18AWG",
                "--volts",
                "12V",
                "--one-way"
            )
        ).Output;
        Assert.Contains("Voltage drop 0.30 V, 2.5 %", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Drop_of_one_run_says_every_option_it_lacks()
    {
        CliResult result = await InProcess.Run("drop", "--current", "8A");
        Assert.Equal(2, result.ExitCode);
        Assert.Equal(
            [
                "--length is needed where no bike is given.",
                "--volts is needed where no bike is given.",
                "--wire is needed where no bike is given.",
            ],
            result.Errors.TrimEnd().Split('\n').Select(l => l["lighting-calc: ".Length..])
        );
    }

    [Fact]
    public async Task An_unknown_table_and_an_unknown_command_are_refused()
    {
        Assert.Contains("the tables are", (await InProcess.Run("tables", "lights")).Errors, StringComparison.Ordinal);
        Assert.Equal(2, (await InProcess.Run("tables", "lights")).ExitCode);
        Assert.Equal(2, (await InProcess.Run("chekc")).ExitCode);
    }

    // The paragraph under the heading "Commands:".
    private static string CommandsOf(string help)
    {
        int start = help.IndexOf("Commands:", StringComparison.Ordinal),
            end = help.IndexOf("\n\n", start, StringComparison.Ordinal);
        return end < 0 ? help[start..] : help[start..end];
    }

    private static async Task<double> TotalAmps(params string[] words)
    {
        using JsonDocument json = JsonDocument.Parse((await InProcess.Run(words)).Output);
        return json
            .RootElement.GetProperty("settings")
            .EnumerateArray()
            .Max(s => s.GetProperty("totalCurrentA").GetDouble());
    }

    private static IEnumerable<string> Keys(JsonElement element) => element.EnumerateObject().Select(p => p.Name);

    [GeneratedRegex(@"^  ([a-z]+)\b(?= .*$)", RegexOptions.Multiline)]
    private static partial Regex CommandLine();

    [GeneratedRegex(@"^  lighting-calc (.+)$", RegexOptions.Multiline)]
    private static partial Regex Example();
}
