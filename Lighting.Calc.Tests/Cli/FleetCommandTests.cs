using System.Text.Json;

namespace Lighting.Calc.Tests.Cli;

/// <summary><c>check</c> on many bikes, as a user types it.</summary>
public sealed class FleetCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_folder_of_bikes_gives_a_row_each_in_the_order_of_names()
    {
        CliResult result = await InProcess.Run("check", "shared/bikes", "--format", "csv");
        string[] lines = Lines(result.Output);
        Assert.StartsWith("folder,bike,verdict,faults,", lines[0], StringComparison.Ordinal);
        Assert.Equal(
            ["chapel-single", "fell-lightweight", "valley-twin"],
            lines[1..].Select(l => Path.GetFileName(l.Split(',')[0]))
        );
        Assert.Equal(0, result.ExitCode);
        Assert.Empty(result.Errors);
    }

    [Fact]
    public async Task Several_bikes_stand_in_the_order_given_and_say_what_each_says_alone()
    {
        string[] bikes = ["valley-twin", "chapel-single"];
        CliResult result = await InProcess.Run(["check", .. bikes.Select(CliProcess.Bike), "--format", "json"]);
        JsonElement[] rows = [.. Lines(result.Output).Select(l => JsonDocument.Parse(l).RootElement)];
        Assert.Equal(bikes.Length, rows.Length);
        for (int i = 0; i < bikes.Length; i++)
        {
            JsonElement alone = JsonDocument
                .Parse((await InProcess.Run("check", CliProcess.Bike(bikes[i]), "--format", "json")).Output)
                .RootElement;
            JsonElement fuse = Assert.Single(alone.GetProperty("fuses").EnumerateArray());
            Assert.Equal(1, rows[i].GetProperty("schema").GetInt32());
            Assert.Equal(CliProcess.Bike(bikes[i]), rows[i].GetProperty("folder").GetString());
            Assert.Equal(alone.GetProperty("bike").GetString(), rows[i].GetProperty("bike").GetString());
            Assert.Equal(fuse.GetProperty("verdict").GetString(), rows[i].GetProperty("fuseVerdict").GetString());
            Assert.Equal(
                fuse.GetProperty("continuousCurrentA").GetDouble(),
                rows[i].GetProperty("continuousCurrentA").GetDouble()
            );
            Assert.Equal(
                alone.GetProperty("charging").GetProperty("breakEvenRpm").GetDouble(),
                rows[i].GetProperty("breakEvenRpm").GetDouble()
            );
            Assert.Equal(
                alone
                    .GetProperty("findings")
                    .EnumerateArray()
                    .Count(f => f.GetProperty("severity").GetString() == "fault"),
                rows[i].GetProperty("faults").GetInt32()
            );
            JsonElement[] worst =
            [
                .. alone
                    .GetProperty("lamps")
                    .EnumerateArray()
                    .Where(l =>
                        l.GetProperty("lamp").GetString() == rows[i].GetProperty("worstLamp").GetString()
                        && l.GetProperty("dropPercent").ValueKind == JsonValueKind.Number
                    ),
            ];
            Assert.Equal(
                worst.Max(l => l.GetProperty("dropPercent").GetDouble()),
                rows[i].GetProperty("dropPercent").GetDouble()
            );
            Assert.Equal(
                worst.Min(l => l.GetProperty("voltageV").GetDouble()),
                rows[i].GetProperty("voltageV").GetDouble()
            );
        }
    }

    [Fact]
    public async Task A_bad_bike_is_reported_and_the_rest_are_done()
    {
        Link("a", "valley-twin");
        Link("c", "valley-twin");
        Directory.CreateDirectory(Path.Combine(_folder.Path, "b"));
        _folder.Write("b/lamps.csv", "circuit,lamp,volts,watts\nhead,head,12,fifty\n");
        CliResult result = await InProcess.Run("check", _folder.Path, "--format", "csv");
        Assert.Equal(2, result.ExitCode);
        Assert.Contains(
            $"{Path.Combine(_folder.Path, "b")}: lamps.csv:2: column 'watts' (4): 'fifty'",
            result.Errors,
            StringComparison.Ordinal
        );
        string[] lines = Lines(result.Output);
        Assert.Equal(4, lines.Length);
        Assert.Equal(["suits", "wrong input", "suits"], lines[1..].Select(l => l.Split(',')[2]));
    }

    [Fact]
    public async Task The_status_is_1_when_some_bike_does_not_suit_and_0_when_all_do()
    {
        Assert.Equal(
            1,
            (await InProcess.Run("check", "Lighting.Calc.Tests/ForeignBikes/builder", CliProcess.Bike("valley-twin")))
                .ExitCode
        );
        Assert.Equal(
            0,
            (await InProcess.Run("check", CliProcess.Bike("valley-twin"), CliProcess.Bike("fell-lightweight"))).ExitCode
        );
    }

    [Fact]
    public async Task A_folder_without_lists_is_passed_over_and_one_whose_lamps_are_missing_is_not()
    {
        Link("bike", "valley-twin");
        Directory.CreateDirectory(Path.Combine(_folder.Path, "photographs"));
        Assert.Equal(2, Lines((await InProcess.Run("check", _folder.Path, "--format", "csv")).Output).Length);
        Directory.CreateDirectory(Path.Combine(_folder.Path, "misspelt"));
        _folder.Write("misspelt/lamp.csv", "circuit,lamp\n");
        CliResult result = await InProcess.Run("check", _folder.Path, "--format", "csv");
        Assert.Equal(3, Lines(result.Output).Length);
        Assert.Equal(2, result.ExitCode);
        Assert.Contains("misspelt: ", result.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Text_shows_the_worst_first_and_no_more_than_asked_for()
    {
        string[] bikes = ["check", "shared/bikes", "Lighting.Calc.Tests/ForeignBikes/builder"];
        string all = (await InProcess.Run(bikes)).Output;
        Assert.Contains("4 bikes: 3 suit, 1 does not suit.", all, StringComparison.Ordinal);
        Assert.True(
            all.IndexOf(" builder", StringComparison.Ordinal)
                < all.IndexOf(" valley-twin", StringComparison.Ordinal)
        );
        Assert.True(
            all.IndexOf(" valley-twin", StringComparison.Ordinal)
                < all.IndexOf(" fell-lightweight", StringComparison.Ordinal)
        );
        Assert.All(Lines(all), line => Assert.True(line.Length <= 80, line));
        string worst = (await InProcess.Run([.. bikes, "--most", "1"])).Output;
        Assert.Contains(" builder", worst, StringComparison.Ordinal);
        Assert.DoesNotContain(" valley-twin", worst, StringComparison.Ordinal);
        Assert.Contains("The worst 1 of 4", worst, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(16)]
    public async Task The_shards_together_equal_the_whole_row_for_row(int count)
    {
        for (int i = 0; i < 11; i++)
            Link(
                $"bike-{i:00}",
                (i % 3) switch
                {
                    0 => "valley-twin",
                    1 => "chapel-single",
                    _ => "fell-lightweight",
                }
            );
        string[] whole = Lines((await InProcess.Run("check", _folder.Path, "--format", "csv")).Output);
        Assert.Equal(12, whole.Length);
        var shards = new string[count][];
        for (int i = 0; i < count; i++)
            shards[i] = Lines(
                (await InProcess.Run("check", _folder.Path, "--format", "csv", "--shard", $"{i + 1}/{count}")).Output
            );
        Assert.All(shards, s => Assert.Equal(whole[0], s[0]));
        for (int row = 0; row < 11; row++)
            Assert.Equal(whole[1 + row], shards[row % count][1 + row / count]);
        Assert.Equal(11, shards.Sum(s => s.Length - 1));
    }

    [Theory]
    [InlineData("--shard", "0/3")]
    [InlineData("--shard", "4/3")]
    [InlineData("--shard", "third")]
    [InlineData("--most", "0")]
    [InlineData("--when", "lights")]
    [InlineData("--volts", "12,5")]
    public async Task A_wrong_option_is_said_once_and_nothing_is_checked(string option, string value)
    {
        CliResult result = await InProcess.Run("check", "shared/bikes", "--format", "csv", option, value);
        Assert.Equal(2, result.ExitCode);
        Assert.Empty(result.Output);
        Assert.Single(Lines(result.Errors));
    }

    [Fact]
    public async Task A_folder_that_may_not_be_read_is_one_message()
    {
        Assert.SkipWhen(
            OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess,
            "a privileged user may read everywhere"
        );
        using var folder = new TemporaryFolder();
        string closed = Path.Combine(folder.Path, "closed");
        Directory.CreateDirectory(closed);
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(closed, UnixFileMode.None);
        CliResult result = await InProcess.Run("check", closed);
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(closed, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        Assert.Equal(2, result.ExitCode);
        Assert.Contains("cannot be read", result.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Timing_tells_the_shares_on_standard_error()
    {
        CliResult result = await InProcess.Run("check", "shared/bikes", "--format", "json", "--timing");
        Assert.Matches(
            @"^lighting-calc: 3 bikes in [0-9.]+ s, [0-9]+ a second on [0-9]+ threads; reading [0-9]+ %, solving and judging [0-9]+ %, writing [0-9]+ % of the work\.\n$",
            result.Errors
        );
        Assert.Equal(3, Lines(result.Output).Length);
    }

    private void Link(string name, string bike) =>
        Directory.CreateSymbolicLink(Path.Combine(_folder.Path, name), CliProcess.Bike(bike));

    private static string[] Lines(string text) => text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
}
