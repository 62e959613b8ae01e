using System.Text.Json;
using Lighting.Calc.Tests.Lists;

namespace Lighting.Calc.Tests.Cli;

/// <summary>The command inside other programs: bikes from standard input, faults as JSON, reports of a few kilobytes,
/// and
/// nothing hidden in what is printed.</summary>
public class EmbeddedInputTests
{
    private const string Twin = "shared/bikes/valley-twin";

    [Fact]
    public async Task Check_reads_a_bike_as_JSON_from_standard_input()
    {
        BikeLists lists = BikeLists.Read(Path.Combine(CliProcess.Root, Twin)).Value;
        CliResult piped = await InProcess.RunOn(BikeListsWriter.WriteJson(lists), "check", "-", "--format", "json");
        CliResult folder = await InProcess.Run("check", Path.Combine(CliProcess.Root, Twin), "--format", "json");
        Assert.Equal((folder.ExitCode, folder.Output, ""), (piped.ExitCode, piped.Output, piped.Errors));
    }

    [Fact]
    public async Task Standard_input_may_be_one_list_of_lamps()
    {
        CliResult result = await InProcess.RunOn(
            "circuit,lamp,code\nstop,stop lamp,P21W\n",
            "load",
            "-",
            "--format",
            "csv"
        );
        Assert.Equal((0, ""), (result.ExitCode, result.Errors));
        Assert.Contains("stop lamp", result.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task With_JSON_the_faults_of_the_input_are_JSON_on_standard_output()
    {
        CliResult result = await InProcess.RunOn(
            """
            {"lamps": [{"circuit": "a", "lamp": "b", "code": "P12W"},
            {"circuit": "a", "lamp": "c", "volts": "12,5", "watts": 5}]}
            """,
            "check",
            "-",
            "--format",
            "json"
        );
        Assert.Equal((2, ""), (result.ExitCode, result.Errors));
        JsonElement root = JsonDocument.Parse(result.Output).RootElement;
        Assert.Equal("faults of the input", root.GetProperty("result").GetString());
        JsonElement[] faults = [.. root.GetProperty("faults").EnumerateArray()];
        Assert.Equal(
            [("lamps", 1, "code", "P12W"), ("lamps", 2, "volts", "12,5")],
            faults.Select(f =>
                (
                    f.GetProperty("list").GetString()!,
                    f.GetProperty("row").GetInt32(),
                    f.GetProperty("column").GetString()!,
                    f.GetProperty("text").GetString()!
                )
            )
        );
        Assert.NotEmpty(faults[0].GetProperty("nearest").EnumerateArray());
        Assert.Equal(JsonValueKind.Null, faults[0].GetProperty("line").ValueKind);
        Assert.Contains(
            "write a decimal point",
            faults[1].GetProperty("message").GetString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Wrong_options_are_JSON_as_well_without_a_list()
    {
        CliResult result = await InProcess.Run(
            "check",
            Path.Combine(CliProcess.Root, Twin),
            "--when",
            "lights=",
            "--format",
            "json"
        );
        Assert.Equal((2, ""), (result.ExitCode, result.Errors));
        JsonElement fault = JsonDocument.Parse(result.Output).RootElement.GetProperty("faults")[0];
        Assert.Equal(JsonValueKind.Null, fault.GetProperty("list").ValueKind);
        Assert.StartsWith(
            "--when 'lights=' is not a condition",
            fault.GetProperty("message").GetString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task The_JSON_of_check_is_that_of_the_library_a_few_kilobytes_and_without_settings()
    {
        BikeReport report = BikeCheck.Evaluate(
            BikeLists.Read(Path.Combine(CliProcess.Root, Twin)).Value.Bike,
            cancellationToken: TestContext.Current.CancellationToken
        );
        CliResult result = await InProcess.Run("check", Path.Combine(CliProcess.Root, Twin), "--format", "json");
        Assert.Equal(BikeReportWriter.ToJson(report) + "\n", result.Output);
        Assert.InRange(result.Output.Length, 1000, 16_000);
        JsonElement root = JsonDocument.Parse(result.Output).RootElement;
        Assert.Equal(report.VerdictText, root.GetProperty("verdict").GetString());
        Assert.Equal(report.Headline, root.GetProperty("headline").GetString());
        Assert.Equal(report.Cautions, root.GetProperty("cautions").EnumerateArray().Select(c => c.GetString()!));
        Assert.Equal(report.WorstDrops.Length, root.GetProperty("lamps").GetArrayLength());
        Assert.False(root.TryGetProperty("settings", out _));
    }

    // What both commands say of a fuse or of a finding has the same key.
    [Fact]
    public async Task Keys_of_check_are_those_of_the_other_commands()
    {
        string twin = Path.Combine(CliProcess.Root, Twin);
        JsonElement check = JsonDocument
            .Parse((await InProcess.Run("check", twin, "--format", "json")).Output)
            .RootElement;
        JsonElement fuse = JsonDocument
            .Parse((await InProcess.Run("fuse", twin, "--format", "json")).Output)
            .RootElement;
        Assert.Empty(KeysOf(check, "fuses").Except(KeysOf(fuse, "fuses")));
        Assert.Equal(KeysOf(fuse, "findings"), KeysOf(check, "findings"));
        Assert.Equal(
            fuse.GetProperty("fuses")[0].GetProperty("worstCurrentA").GetDouble(),
            check.GetProperty("fuses")[0].GetProperty("worstCurrentA").GetDouble()
        );
    }

    [Fact]
    public async Task CSV_of_check_has_the_verdict()
    {
        CliResult result = await InProcess.Run("check", Path.Combine(CliProcess.Root, Twin), "--format", "csv");
        string[] lines = result.Output.Split('\n');
        Assert.StartsWith("verdict,lamp,", lines[0], StringComparison.Ordinal);
        Assert.All(lines[1..^1], l => Assert.Matches("^(suits|does not suit|not judged),", l));
    }

    [Theory]
    [InlineData("\u001b[31mred", "\\u001B[31mred")]
    [InlineData("a\u202Etxt.exe", "a\\u202Etxt.exe")]
    [InlineData("zero\u200Bwidth", "zero\\u200Bwidth")]
    public async Task Nothing_hidden_in_folder_names_or_options_is_printed(string name, string shown)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "names of Unix");
        using var folder = new TemporaryFolder();
        foreach (string bike in new[] { name, "plain" })
        {
            Directory.CreateDirectory(Path.Combine(folder.Path, bike));
            File.WriteAllText(Path.Combine(folder.Path, bike, "lamps.csv"), "circuit,lamp,code\nstop,stop lamp,P21W\n");
        }

        foreach (string format in new[] { "text", "csv", "json", "html" })
        {
            CliResult many = await InProcess.Run("check", folder.Path, "--format", format);
            Assert.DoesNotContain(name, many.Output + many.Errors, StringComparison.Ordinal);
            Assert.Contains(
                shown,
                many.Output.Replace("\\u001b", "\\u001B", StringComparison.Ordinal),
                StringComparison.Ordinal
            );
        }

        foreach (
            string[] words in new[]
            {
                new[] { "load", Path.Combine(folder.Path, "plain"), "--when", name },
                ["tables", name],
                ["load", name + "/none"],
            }
        )
        {
            CliResult wrong = await InProcess.Run(words);
            Assert.Equal(2, wrong.ExitCode);
            Assert.DoesNotContain(name, wrong.Output + wrong.Errors, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("stop\u202Epmal")]
    [InlineData("stop\u200B lamp")]
    [InlineData("stop\u001b[1m lamp")]
    public void Names_of_lists_hold_nothing_hidden(string name) =>
        Assert.Contains(
            ListSamples.Faults(ListSamples.Of(("lamps.csv", $"circuit,lamp,code\nstop,{name},P21W\n"))),
            f => f.EndsWith("holds a character that cannot be seen", StringComparison.Ordinal)
        );

    private static IEnumerable<string> KeysOf(JsonElement root, string list) =>
        root.GetProperty(list)[0].EnumerateObject().Select(p => p.Name);
}
