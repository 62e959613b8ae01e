using System.Text;
using System.Text.RegularExpressions;
using Lighting.Calc.Cli;

namespace Lighting.Calc.Tests.Cli;

/// <summary>Runs the program inside the test, where the process does not matter.</summary>
internal static partial class InProcess
{
    public static Task<CliResult> Run(params string[] words) => Run("", null, words);

    /// <summary>Runs it with a text on its standard input.</summary>
    public static Task<CliResult> RunOn(string input, params string[] words) => Run(input, null, words);

    /// <summary>Runs it with what a person types at its questions.</summary>
    public static Task<CliResult> Answering(string? answers, params string[] words) => Run("", answers, words);

    private static async Task<CliResult> Run(string input, string? answers, string[] words)
    {
        var output = new StringWriter();
        var errors = new StringWriter();
        using StringReader? typed = answers is null ? null : new StringReader(answers);
        int status = await new Application(
            output,
            errors,
            isTerminal: false,
            showsProgress: false,
            () => new MemoryStream(Encoding.UTF8.GetBytes(input)),
            typed,
            asks: typed is not null
        ).RunAsync(words);
        return new CliResult(status, output.ToString(), errors.ToString());
    }

    /// <summary>Runs a line as typed after the program's name; double quotes keep words together.</summary>
    public static Task<CliResult> RunLine(string line) =>
        Run([.. Words().Matches(line).Select(w => w.Value.Trim('"'))]);

    [GeneratedRegex("\"[^\"]*\"|\\S+")]
    private static partial Regex Words();
}
