using System.Text.Json;

namespace Lighting.Calc.Tests.Cli;

/// <summary>The command <c>swap</c> as a user types it.</summary>
public class SwapCommandTests
{
    [Fact]
    public async Task The_brighter_function_of_an_LED_in_a_tail_lamp_is_told()
    {
        using var folder = new TemporaryFolder();
        string swaps = folder.Write("swaps.csv", "lamp,new code\ntail lamp,LED stop-tail\n");
        string[] words = ["swap", CliProcess.Bike("valley-twin"), "--swaps", swaps, "--format", "json"];
        CliResult result = await InProcess.Run(words);
        Assert.Contains("LED stop-tail minor", result.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_folders_swap_list_is_taken_by_default_and_the_first_line_is_the_verdict()
    {
        CliResult result = await InProcess.Run("swap", CliProcess.Bike("valley-twin"));
        Assert.Equal("", result.Errors);
        Assert.Contains("The swapped bike ", result.Output.Split('\n')[1], StringComparison.Ordinal);
        Assert.Contains("15 A main: suits", result.Output, StringComparison.Ordinal);
        Assert.Contains("load resistors", result.Output, StringComparison.Ordinal);
        Assert.All(result.Output.Split('\n'), line => Assert.True(line.Length <= 80, $"{line.Length}: {line}"));
    }

    [Theory]
    [InlineData("not stated", 0)]
    [InlineData("series", 0)]
    [InlineData("none", 1)]
    public async Task The_exit_status_is_that_of_the_swapped_bike(string regulator, int status)
    {
        string[] words = ["swap", CliProcess.Bike("chapel-single"), "--all-led"];
        Assert.Equal(
            status,
            (await InProcess.Run(regulator == "not stated" ? words : [.. words, "--regulator", regulator])).ExitCode
        );
    }

    [Fact]
    public async Task JSON_has_before_and_after_of_every_part()
    {
        using JsonDocument json = JsonDocument.Parse(
            (await InProcess.Run("swap", CliProcess.Bike("valley-twin"), "--format", "json")).Output
        );
        JsonElement root = json.RootElement;
        Assert.Equal(1, root.GetProperty("schema").GetInt32());
        Assert.True(
            root.GetProperty("totalCurrentA").GetProperty("before").GetDouble()
                > 2 * root.GetProperty("totalCurrentA").GetProperty("after").GetDouble()
        );
        Assert.Equal(10, root.GetProperty("lamps").GetArrayLength());
        JsonElement tail = root.GetProperty("lamps")
            .EnumerateArray()
            .Single(l => l.GetProperty("lamp").GetString() == "tail lamp");
        Assert.Equal(0.6, tail.GetProperty("powerW").GetProperty("after").GetDouble(), 1e-9);
        Assert.Equal(7.5, root.GetProperty("fuses")[0].GetProperty("after").GetProperty("smallestRatingA").GetDouble());
        Assert.True(
            root.GetProperty("charging").GetProperty("netAmpereHours").GetProperty("after").GetDouble()
                > root.GetProperty("charging").GetProperty("netAmpereHours").GetProperty("before").GetDouble()
        );
        Assert.Equal(
            ["severity", "kind", "subject", "message"],
            root.GetProperty("findings")[0].EnumerateObject().Select(p => p.Name)
        );
    }

    [Fact]
    public async Task A_swap_file_of_its_own_may_name_generic_LEDs()
    {
        using var folder = new TemporaryFolder();
        string swaps = folder.Write(
            "trial.csv",
            "lamp,new code\ntail lamp,LED stop-tail minor\nstop lamp,led stop-tail\n"
        );
        string[] rows = (
            await InProcess.Run("swap", CliProcess.Bike("valley-twin"), "--swaps", swaps, "--format", "csv")
        )
            .Output.TrimEnd()
            .Split('\n');
        Assert.StartsWith(
            "lamp,circuit,quantity,replaced,setting,voltageBeforeV,voltageAfterV",
            rows[0],
            StringComparison.Ordinal
        );
        Assert.Equal(11, rows.Length);
        Assert.Equal(2, rows.Count(r => r.Contains(",yes,", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task All_LED_lists_the_lamps_that_stay()
    {
        using var folder = new TemporaryFolder();
        string lamps = folder.Write(
            "lamps.csv",
            "circuit,lamp,code,volts,watts\nstop,stop lamp,P21W,,\npanel,odd lamp,,12,3\n"
        );
        string output = (await InProcess.Run("swap", lamps, "--all-led", "--fuse", "15A")).Output;
        Assert.Contains("Lamps not replaced", output, StringComparison.Ordinal);
        Assert.Contains("odd lamp", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("no lamp is replaced", "circuit,lamp,volts,watts\npanel,odd lamp,12,3\n", "--all-led")]
    [InlineData("add swaps.csv", "circuit,lamp,code\nstop,stop lamp,P21W\n")]
    [InlineData("not both", "circuit,lamp,code\nstop,stop lamp,P21W\n", "--all-led", "--swaps", "x.csv")]
    [InlineData("x.csv", "circuit,lamp,code\nstop,stop lamp,P21W\n", "--swaps", "x.csv")]
    public async Task Nothing_to_swap_is_wrong_input(string message, string lamps, params string[] more)
    {
        using var folder = new TemporaryFolder();
        CliResult result = await InProcess.Run(["swap", folder.Write("lamps.csv", lamps), .. more]);
        Assert.Equal(2, result.ExitCode);
        Assert.Contains(message, result.Errors, StringComparison.Ordinal);
        Assert.Equal("", result.Output);
    }
}
