using System.Text.Json;

namespace Lighting.Calc.Tests.Cli;

/// <summary><c>check --tolerance</c> as a user types it.</summary>
public class ToleranceCommandTests
{
    [Fact]
    public async Task The_page_has_a_tolerance_section_and_piped_messages_hold_no_progress()
    {
        CliResult result = await Check("--samples", "500");
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("Tolerance: 500 bikes drawn", result.Output, StringComparison.Ordinal);
        Assert.Contains("stator output", result.Output, StringComparison.Ordinal);
        Assert.All(result.Output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.Empty(result.Errors);
    }

    [Fact]
    public async Task JSON_has_a_tolerance_object_and_is_the_same_from_process_to_process()
    {
        string[] words = ["--format", "json", "--samples", "500", "--seed", "14"];
        CliResult first = await Check(words);
        Assert.Equal(
            first.Output,
            CliProcess.Run(["check", CliProcess.Bike("valley-twin"), "--tolerance", .. words]).Output
        );
        Assert.NotEqual(first.Output, (await Check([.. words[..^1], "15"])).Output);
        using JsonDocument json = JsonDocument.Parse(first.Output);
        JsonElement tolerance = json.RootElement.GetProperty("tolerance");
        Assert.Equal(500, tolerance.GetProperty("samples").GetInt32());
        Assert.Equal(14, tolerance.GetProperty("seed").GetInt64());
        JsonElement volts = tolerance.GetProperty("lamps")[0].GetProperty("voltageV");
        Assert.True(
            volts.GetProperty("p5").GetDouble() < volts.GetProperty("p50").GetDouble()
                && volts.GetProperty("p50").GetDouble() < volts.GetProperty("p95").GetDouble()
        );
        Assert.All(
            tolerance.GetProperty("parts").EnumerateArray(),
            p => Assert.NotEmpty(p.GetProperty("source").GetString()!)
        );
    }

    [Fact]
    public async Task CSV_has_one_row_a_result_with_its_percentiles() =>
        Assert.StartsWith(
            "subject,result,listed,p5,p50,p95,mattersMost,share",
            (await Check("--format", "csv", "--samples", "100")).Output,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("--samples and --seed go with --tolerance", "shared/bikes/valley-twin", "--seed", "3")]
    [InlineData("out of range", "shared/bikes/valley-twin", "--tolerance", "--samples", "5")]
    [InlineData("lighting coil", "shared/bikes/fell-lightweight", "--tolerance")]
    public async Task What_makes_no_sense_is_refused_as_wrong_input(string message, params string[] words)
    {
        CliResult result = await InProcess.Run(["check", .. words]);
        Assert.Equal(2, result.ExitCode);
        Assert.Contains(message, result.Errors, StringComparison.Ordinal);
        Assert.Empty(result.Output);
    }

    private static Task<CliResult> Check(params string[] words) =>
        InProcess.Run(["check", CliProcess.Bike("valley-twin"), "--tolerance", .. words]);
}
