using System.Diagnostics;

namespace Lighting.Calc.Tests.Cli;

/// <summary>Runs the built program as a process, as a user would.</summary>
internal static class CliProcess
{
    /// <summary>The root of the repository: where the demo bikes and the README stand.</summary>
    public static string Root { get; } = FindRoot();

    public static string Bike(string name) => Path.Combine(Root, "shared", "bikes", name);

    /// <summary>The program as a word of a shell's line.</summary>
    public static string Typed { get; } = $"dotnet '{Path.Combine(AppContext.BaseDirectory, "lighting-calc.dll")}'";

    public static CliResult Run(params string[] words) => RunIn(Root, words);

    public static CliResult RunIn(string folder, params string[] words)
    {
        var start = new ProcessStartInfo("dotnet")
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "lighting-calc.dll"));
        foreach (string word in words)
            start.ArgumentList.Add(word);
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new CliResult(process.ExitCode, output, errors.GetAwaiter().GetResult());
    }

    private static string FindRoot()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Lighting.Calc.slnx")))
            folder = Path.GetDirectoryName(folder);
        return folder ?? throw new InvalidOperationException("The tests run outside the repository.");
    }
}
