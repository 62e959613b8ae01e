using System.CommandLine;

namespace Lighting.Calc.Tests.Cli;

/// <summary>The outputs of command lines, each made once.</summary>
public sealed class GoldenOutputs
{
    private readonly Dictionary<string, CliResult> _made = [];

    internal async Task<CliResult> Of(string line)
    {
        if (!_made.TryGetValue(line, out CliResult? result))
        {
            result = await InProcess.RunLine(line);
            // Help names the program that runs, which is the tests.
            _made[line] = result = result with
            {
                Output = result.Output.Replace(RootCommand.ExecutableName, "lighting-calc", StringComparison.Ordinal),
            };
        }

        return result;
    }
}
