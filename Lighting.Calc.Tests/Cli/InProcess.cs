using System.Text.RegularExpressions;
using Lighting.Calc.Cli;

namespace Lighting.Calc.Tests.Cli;

/// <summary>Runs the program inside the test, where the process does not matter.</summary>
internal static partial class InProcess
{
    public static async Task<CliResult> Run(params string[] words)
    {
        var output = new StringWriter();
        var errors = new StringWriter();
        int status = await new Application(output, errors, isTerminal: false, showsProgress: false).RunAsync(words);
        return new CliResult(status, output.ToString(), errors.ToString());
    }

    /// <summary>Runs a line as typed after the program's name; double quotes keep words together.</summary>
    public static Task<CliResult> RunLine(string line) =>
        Run([.. Words().Matches(line).Select(w => w.Value.Trim('"'))]);

    [GeneratedRegex("\"[^\"]*\"|\\S+")]
    private static partial Regex Words();
}
