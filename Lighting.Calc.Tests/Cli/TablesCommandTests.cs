namespace Lighting.Calc.Tests.Cli;

/// <summary>The published tables as people look things up in them.</summary>
public class TablesCommandTests
{
    [Theory]
    [InlineData("lamps")]
    [InlineData("lamps BA15s")]
    [InlineData("older-fuses torpedo")]
    public async Task A_page_of_lamps_fits_80_columns(string words)
    {
        CliResult result = await InProcess.RunLine($"tables {words}");
        Assert.Equal((0, ""), (result.ExitCode, result.Errors));
        Assert.All(result.Output.Split('\n'), line => Assert.True(line.Length <= 80, $"{line.Length}: {line}"));
    }

    [Fact]
    public async Task A_lamp_has_its_code_use_volts_watts_and_cap()
    {
        string output = (await InProcess.RunLine("tables lamps H4")).Output;
        string[][] rows = [.. output.Split('\n').Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries))];
        Assert.Contains(["code", "use", "V", "W", "cap"], rows);
        Assert.Contains(["H4", "high", "headlamp", "12", "60", "P43t-38"], rows);
        Assert.Contains(["H4", "low", "headlamp", "12", "55", "P43t-38"], rows);
    }

    // 12.8 V · 2.10 A: a lamp without watts on its cap has the power at its design voltage.
    [Fact]
    public async Task A_lamp_rated_by_its_current_has_the_power_there() =>
        Assert.Contains(" 26.9 ", (await InProcess.RunLine("tables lamps 1156")).Output, StringComparison.Ordinal);

    [Theory]
    [InlineData("tables lamps H4", 2)]
    [InlineData("tables lamps p21/5w 6", 2)]
    [InlineData("tables lamps H4 --all", 2)]
    [InlineData("tables fuse-ratings glass 35", 1)]
    public async Task Words_leave_the_rows_in_which_they_all_stand(string line, int rows)
    {
        string[] lines = (await InProcess.RunLine($"{line} --format csv")).Output.Split("\r\n");
        Assert.True(lines.Length - 2 >= rows);
        string[] words = [.. line.Split(' ').Skip(2).Where(w => w != "--all")];
        Assert.All(
            lines[1..^1],
            l => Assert.All(words, w => Assert.Contains(w, l, StringComparison.OrdinalIgnoreCase))
        );
    }

    [Fact]
    public async Task A_word_that_no_row_has_is_one_message()
    {
        CliResult result = await InProcess.RunLine("tables lamps H99");
        Assert.Equal(2, result.ExitCode);
        Assert.Equal("lighting-calc: the table 'lamps' has no row with 'H99'.\n", result.Errors);
    }

    [Fact]
    public async Task A_cable_by_its_strands()
    {
        string output = (await InProcess.RunLine("wire --measured 28/0.30")).Output;
        string head = "Cable: 28/0.30\n2.00 mm² of copper: nearest to 2 mm2 and 14 AWG.\n";
        Assert.StartsWith(head, output, StringComparison.Ordinal);
        Assert.Contains("as ordinary PVC cable", output, StringComparison.Ordinal);
        Assert.Contains("25.0 A, at most 2.8 mm across", output, StringComparison.Ordinal);
        Assert.Equal(2, (await InProcess.RunLine("wire --measured 28")).ExitCode);
        Assert.Equal(2, (await InProcess.RunLine("wire shared/bikes/valley-twin --measured 28/0.30")).ExitCode);
    }
}
