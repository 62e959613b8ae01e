using System.Diagnostics;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Rendering;

/// <summary>A headless Chromium from the operating system's packages.</summary>
internal static class Browser
{
    private static readonly string[] s_names = ["chromium", "chromium-browser", "google-chrome"];

    private static readonly string[] s_options =
    [
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--disable-extensions",
        "--hide-scrollbars",
        "--enable-logging=stderr",
        "--force-device-scale-factor=1",
    ];

    /// <summary>Where it is, or null.</summary>
    public static string? Program { get; } =
        (
            (
                Environment.GetEnvironmentVariable("LIGHTING_CALC_NO_BROWSER") is null
                    ? Environment.GetEnvironmentVariable("PATH")
                    : null
            ) ?? ""
        )
            .Split(Path.PathSeparator)
            .SelectMany(folder => s_names.Select(name => Path.Combine(folder, name)))
            .FirstOrDefault(File.Exists);

    public static void SkipWhereThereIsNone() =>
        Assert.SkipWhen(
            Program is null,
            "There is no Chromium on the path: install the operating system's package chromium to check pages in a "
                + "browser."
        );

    /// <summary>Opens a page and gives what the browser says: the page's document after it ran, and its
    /// messages.</summary>
    public static (string Output, string[] Console) Open(TemporaryFolder folder, string file, params string[] options)
    {
        var start = new ProcessStartInfo(Program!)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        foreach (
            string option in s_options
                .Append($"--user-data-dir={Path.Combine(folder.Path, "profile")}")
                .Concat(options)
                .Append(new Uri(file).AbsoluteUri)
        )
            start.ArgumentList.Add(option);
        using Process process = Process.Start(start)!;
        Task<string> messages = process.StandardError.ReadToEndAsync();
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        if (!process.WaitForExit(TimeSpan.FromMinutes(10)))
        {
            process.Kill(entireProcessTree: true);
            Assert.Fail("The browser did not finish within ten minutes.");
        }

        return (
            output.GetAwaiter().GetResult(),
            [
                .. messages
                    .GetAwaiter()
                    .GetResult()
                    .Split('\n')
                    .Where(l => l.Contains("CONSOLE", StringComparison.Ordinal)),
            ]
        );
    }
}
