using System.Text.RegularExpressions;

namespace Lighting.Calc.Tests.Cli;

/// <summary>Colour and bold letters on a terminal alone, and not there either when NO_COLOR is set.</summary>
public partial class ColourTests
{
    // A pseudo-terminal of util-linux's script: the program sees a terminal, the test what it was sent.
    private const string OnTerminal = "TERM=xterm script -qec \"{0} check '$1'\" /dev/null";

    private const string SameForm = "{0} check \"$1\"";

    [Fact]
    public void A_terminal_gets_bold_titles_and_a_green_verdict()
    {
        SkipWithoutTerminals();
        CliResult result = Run("unset NO_COLOR; ", OnTerminal);
        Assert.Contains("\u001b[1m", result.Output, StringComparison.Ordinal);
        Assert.Matches(@"\u001b\[[\d;]*32m✔ Suits", result.Output);
        Assert.Contains("✔ Suits.", result.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1")]
    [InlineData("yes", Traits = ["time", "long"])]
    [Trait("time", "long")]
    public void A_terminal_with_NO_COLOR_gets_none(string value)
    {
        SkipWithoutTerminals();
        CliResult result = Run($"export NO_COLOR={value}; ", OnTerminal);
        Assert.DoesNotMatch(Letters(), result.Output);
        Assert.Contains("✔ Suits.", result.Output, StringComparison.Ordinal);
    }

    // As no-color.org has it, the variable counts when it is not empty.
    [Fact]
    [Trait("time", "long")]
    public void An_empty_NO_COLOR_changes_nothing()
    {
        SkipWithoutTerminals();
        Assert.Matches(Letters(), Run("export NO_COLOR=; ", OnTerminal).Output);
    }

    [Theory]
    [InlineData(" | cat", Traits = ["time", "long"])]
    [InlineData("")]
    public void A_pipe_gets_none(string end)
    {
        CliResult result = Run(
            "unset NO_COLOR; export TERM=xterm-256color COLORTERM=truecolor FORCE_COLOR=1; ",
            SameForm + end
        );
        Assert.DoesNotMatch(Letters(), result.Output);
        Assert.Contains("✔ Suits.", result.Output, StringComparison.Ordinal);
    }

    [Fact]
    [Trait("time", "long")]
    public void A_file_gets_none_from_a_terminal()
    {
        SkipWithoutTerminals();
        using var folder = new TemporaryFolder();
        string file = Path.Combine(folder.Path, "check.txt");
        CliResult result = Shell.Run(
            $"unset NO_COLOR; TERM=xterm script -qec \"{CliProcess.Typed} check '$1' --out '$2'\" /dev/null",
            CliProcess.Bike("valley-twin"),
            file
        );
        Assert.True(File.Exists(file), result.Output + result.Errors);
        Assert.DoesNotContain("\u001b", File.ReadAllText(file), StringComparison.Ordinal);
    }

    private static CliResult Run(string before, string line) =>
        Shell.Run(
            before + string.Format(System.Globalization.CultureInfo.InvariantCulture, line, CliProcess.Typed),
            CliProcess.Bike("valley-twin")
        );

    private static void SkipWithoutTerminals() =>
        Assert.SkipUnless(
            OperatingSystem.IsLinux() && Shell.Run("command -v script").ExitCode == 0,
            "There is no 'script' of util-linux to make a terminal with."
        );

    // What sets colours or weight. Others the runtime sends of itself, to set the keypad.
    [GeneratedRegex(@"\u001b\[[\d;:]*m")]
    private static partial Regex Letters();
}
