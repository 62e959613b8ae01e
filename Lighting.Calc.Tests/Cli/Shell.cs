using System.Diagnostics;

namespace Lighting.Calc.Tests.Cli;

/// <summary>Runs a line of a shell; its further words are <c>$1</c>, <c>$2</c> and so on.</summary>
internal static class Shell
{
    public static CliResult Run(string line, params string[] words)
    {
        var start = new ProcessStartInfo("bash")
        {
            WorkingDirectory = CliProcess.Root,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (string word in new[] { "-c", line, "bash" }.Concat(words))
            start.ArgumentList.Add(word);
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new CliResult(process.ExitCode, output, errors.GetAwaiter().GetResult());
    }
}
