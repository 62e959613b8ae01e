// What a mistyped command line is answered: one line for each mistake, with the word that may be meant, and exit 2.
using Lighting.Calc.Cli;

namespace Lighting.Calc.Tests.Cli;

public sealed class CommandLineProblemTests
{
    private const string See = "lighting-calc: see 'lighting-calc --help' or 'lighting-calc COMMAND --help'.";

    [Theory]
    [InlineData("Threads must be at least 1. (Parameter 'threads')", "Threads must be at least 1.")]
    [InlineData("The speed is out of range. (Parameter 'rpm')\nActual value was -1.", "The speed is out of range.")]
    [InlineData("The voltage (Parameter of the list) is missing.", "The voltage (Parameter of the list) is missing.")]
    public void The_name_of_a_parameter_is_not_shown(string message, string shown) =>
        Assert.Equal(shown, PlainMessage.Of(new InvalidOperationException(message)));

    [Theory]
    [InlineData("chek BIKE", "there is no command 'chek'; did you mean 'check'?")]
    [InlineData("chek --fuze 15A", "there is no command 'chek'; did you mean 'check'?")]
    [InlineData("frobnicate", "there is no command 'frobnicate'.")]
    [InlineData("--verson", "'lighting-calc' has no option '--verson'; did you mean '--version'?")]
    [InlineData("check --fuze 15A", "'check' has no option '--fuze'; did you mean '--fuse'?")]
    [InlineData("check BIKE --fuze=15A", "'check' has no option '--fuze'; did you mean '--fuse'?")]
    [InlineData("check BIKE -fuse 15A", "'check' has no option '-fuse'; did you mean '--fuse'?")]
    [InlineData(
        "fuse BIKE --fuze 15A --wen lights=main",
        "'fuse' has no option '--fuze'; did you mean '--fuse'?",
        "'fuse' has no option '--wen'; did you mean '--when'?"
    )]
    [InlineData("tables -x", "'tables' has no option '-x'.")]
    [InlineData(
        "check BIKE --format jsno",
        "--format: 'jsno' is not one of csv, html, json, text; did you mean 'json'?"
    )]
    [InlineData(
        "check BIKE --engine of --format xml",
        "--engine: 'of' is not one of off, running; did you mean 'off'?",
        "--format: 'xml' is not one of csv, html, json, text."
    )]
    public async Task Mistyped_word_is_told_with_the_word_that_may_be_meant(string line, params string[] expected)
    {
        CliResult result = await InProcess.Run(
            line.Replace("BIKE", CliProcess.Bike("valley-twin"), StringComparison.Ordinal).Split(' ')
        );
        Assert.Equal(2, result.ExitCode);
        Assert.Empty(result.Output);
        string[] told = result.Errors.Split(
            '\n',
            StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries
        );
        Assert.Equal([.. expected.Select(e => $"lighting-calc: {e}"), See], told);
    }

    [Theory]
    [InlineData("shunt", "", true)]
    [InlineData("series", "", false)]
    [InlineData("series", "--regulator shunt", true)]
    [InlineData("shunt", "--regulator series", false)]
    public async Task A_shunt_limit_goes_with_a_shunt_of_the_list_or_of_the_line(
        string listed,
        string given,
        bool isTaken
    )
    {
        using var folder = new TemporaryFolder();
        folder.Write("bike.csv", $"item,value\nregulator,{listed}\n");
        folder.Write("lamps.csv", "circuit,lamp,watts\nhead,headlamp,45\n");
        folder.Write("charging.csv", "rpm,current\n1000,2\n4000,10\n");
        string[] words = ["charging", folder.Path, "--shunt-limit", "8 A"];
        CliResult result = await InProcess.Run([.. words, .. given.Split(' ', StringSplitOptions.RemoveEmptyEntries)]);
        Assert.Equal(!isTaken, result.Errors.Contains("goes with a shunt regulator", StringComparison.Ordinal));
        Assert.Equal(isTaken, result.ExitCode != 2);
    }

    [Theory]
    [InlineData("check BIKE --format")]
    [InlineData("check BIKE --samples many")]
    [InlineData("")]
    public async Task Every_other_mistake_is_one_line_too(string line)
    {
        CliResult result = await InProcess.Run(
            line.Replace("BIKE", CliProcess.Bike("valley-twin"), StringComparison.Ordinal)
                .Split(' ', StringSplitOptions.RemoveEmptyEntries)
        );
        Assert.Equal(2, result.ExitCode);
        string[] told = result.Errors.Split(
            '\n',
            StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries
        );
        Assert.Equal(2, told.Length);
        Assert.StartsWith("lighting-calc: ", told[0], StringComparison.Ordinal);
        Assert.Equal(See, told[1]);
    }

    [Theory]
    [InlineData("--help --fuze")]
    [InlineData("check --fuze --help")]
    [InlineData("[suggest:6] check\u00a0--fuze")]
    public async Task Help_and_completion_answer_whatever_else_is_typed(string line)
    {
        CliResult result = await InProcess.Run([.. line.Split(' ').Select(w => w.Replace('\u00a0', ' '))]);
        Assert.Equal(0, result.ExitCode);
        Assert.DoesNotContain("lighting-calc: ", result.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("check", "")]
    [InlineData("check", "BIKE", "")]
    [InlineData("tables", "")]
    [InlineData("check", "-")]
    [InlineData("load", "")]
    [InlineData("swap", "BIKE", "--swaps", "")]
    [InlineData("faults", "BIKE", "")]
    [InlineData("faults", "BIKE", "--priors", "")]
    [InlineData("check", "BIKE", "--volts", "")]
    public async Task Empty_words_and_lone_dashes_are_told_of(params string[] words)
    {
        CliResult result = await InProcess.Run([
            .. words.Select(w => w == "BIKE" ? CliProcess.Bike("valley-twin") : w),
        ]);
        Assert.Equal(2, result.ExitCode);
        Assert.StartsWith("lighting-calc: ", result.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Value_with_a_minus_and_what_follows_two_dashes_are_no_options()
    {
        CliResult volts = await InProcess.Run("check", CliProcess.Bike("valley-twin"), "--volts", "-5");
        Assert.Equal("lighting-calc: --volts: '-5' is out of range.", volts.Errors.Trim());
        CliResult infinite = await InProcess.Run("load", CliProcess.Bike("valley-twin"), "--volts", "-Infinity");
        Assert.StartsWith("lighting-calc: --volts: '-Infinity'", infinite.Errors, StringComparison.Ordinal);
        CliResult path = await InProcess.Run("check", "--", "--odd");
        Assert.Equal("lighting-calc: '--odd': there is no such file or folder", path.Errors.Trim());
    }
}
