using System.Text.RegularExpressions;

namespace Lighting.Calc.Tests.Cli;

/// <summary>The help and the version as a user asks for them.</summary>
public partial class HelpTests
{
    [Fact]
    public async Task The_version_is_three_numbers_and_nothing_else()
    {
        CliResult result = await InProcess.Run("--version");
        Assert.Equal((0, ""), (result.ExitCode, result.Errors));
        Assert.Matches(@"\A\d+\.\d+\.\d+(-[0-9a-z.]+)?\n\z", CliProcess.Run("--version").Output);
    }

    [Fact]
    public async Task The_help_tells_files_and_every_exit_status()
    {
        string help = (await InProcess.Run("--help")).Output;
        Assert.Contains("lamps.csv is required", help, StringComparison.Ordinal);
        string[] statuses = [.. Status().Matches(help).Select(m => m.Groups[1].Value)];
        Assert.Equal(["0", "1", "2", "3"], statuses);
    }

    [Fact]
    public async Task The_help_names_every_list_that_a_bike_may_have()
    {
        string help = (await InProcess.Run("--help")).Output;
        Assert.All(Lighting.Calc.ListSource.KnownNames, name => Assert.Contains(name, help, StringComparison.Ordinal));
    }

    [GeneratedRegex("^  ([0-9])  ", RegexOptions.Multiline)]
    private static partial Regex Status();
}
