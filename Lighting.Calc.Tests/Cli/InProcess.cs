using Lighting.Calc.Cli;

namespace Lighting.Calc.Tests.Cli;

/// <summary>Runs the program inside the test, where what matters is not the process.</summary>
internal static class InProcess
{
    public static async Task<CliResult> Run(params string[] words)
    {
        var output = new StringWriter();
        var errors = new StringWriter();
        int status = await new Application(output, errors, isTerminal: false, showsProgress: false).RunAsync(words);
        return new CliResult(status, output.ToString(), errors.ToString());
    }
}
