using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests;

/// <summary>Lines of code are at most as long as .editorconfig says. In tests, text that is compared or run, and the
/// README's examples, may be longer.</summary>
public class LineWidthTests
{
    private const int Width = 120;

    [Theory]
    [InlineData("Lighting.Calc")]
    [InlineData("Lighting.Calc.Cli")]
    [InlineData("Lighting.Calc.Tests")]
    public void No_line_is_longer_than_120_columns(string project)
    {
        string root = CliProcess.Root;
        Assert.Contains(
            FormattableString.Invariant($"max_line_length = {Width}"),
            File.ReadAllText(Path.Combine(root, ".editorconfig")),
            StringComparison.Ordinal
        );
        string[] longLines =
        [
            .. Sources(Path.Combine(root, project))
                .SelectMany(f => File.ReadLines(f).Select((line, i) => (At: $"{Path.GetFileName(f)}:{i + 1}", line)))
                .Where(l => l.line.Length > Width && !(project == "Lighting.Calc.Tests" && IsText(l.line)))
                .Select(l => l.At),
        ];
        Assert.Empty(longLines);
    }

    private static IEnumerable<string> Sources(string folder) =>
        Directory
            .EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj"))
            .Where(f => Path.GetFileName(f) != "LibraryExamples.cs");

    // Patterns, scripts for the shell and scripts for the browser.
    private static bool IsText(string line) =>
        line.TrimStart().StartsWith('@')
        || line.Contains("\"\"\"", StringComparison.Ordinal)
        || line.TrimStart().StartsWith("const ", StringComparison.Ordinal)
        || line.TrimStart().StartsWith("for (const ", StringComparison.Ordinal)
        || line.Contains("srcdoc", StringComparison.Ordinal);
}
