using System.Text.RegularExpressions;
using Lighting.Calc.Cli;

namespace Lighting.Calc.Tests.Cli;

/// <summary>Runs the program inside the test, where the process does not matter.</summary>
internal static partial class InProcess
{
    public static Task<CliResult> Run(params string[] words) => Answering(null, words);

    /// <summary>Runs it with what a person types at its questions.</summary>
    public static async Task<CliResult> Answering(string? answers, params string[] words)
    {
        var output = new StringWriter();
        var errors = new StringWriter();
        using StringReader? typed = answers is null ? null : new StringReader(answers);
        var application = new Application(output, errors, isTerminal: false, showsProgress: false, typed);
        int status = await application.RunAsync(words);
        return new CliResult(status, output.ToString(), errors.ToString());
    }

    /// <summary>Runs a line as typed after the program's name; double quotes keep words together.</summary>
    public static Task<CliResult> RunLine(string line) =>
        Run([.. Words().Matches(line).Select(w => w.Value.Trim('"'))]);

    [GeneratedRegex("\"[^\"]*\"|\\S+")]
    private static partial Regex Words();
}
