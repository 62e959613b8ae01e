using System.Text.RegularExpressions;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Examples;

/// <summary>The README's C# is that of <see cref="LibraryExamples"/>, so that it compiles, runs and prints what it
/// should.</summary>
public partial class ReadmeTests
{
    [Fact]
    public void Every_block_of_README_and_manual_is_an_example_that_runs_as_a_test_and_every_example_is_shown()
    {
        string[] shown = [.. Block().Matches(Documents).Select(m => m.Groups[1].Value.Trim())];
        string[] run =
        [
            .. Region()
                .Matches(Source)
                .Select(m => Dedented(m.Groups[1].Value))
                .Select(e => e.Replace("= Read(", "= BikeLists.Read(", StringComparison.Ordinal)),
        ];
        Assert.Equal(8, run.Length);
        Assert.Equal(run.Order(StringComparer.Ordinal), shown.Select(WithoutUsings).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_README_names_the_namespaces_that_its_examples_use()
    {
        string first = Block().Match(Documents).Groups[1].Value;
        string[] shown = [.. Using().Matches(first).Select(m => m.Value)];
        Assert.Equal(["using Lighting.Calc;", "using UnitsNet;"], shown);
    }

    [Fact]
    public async Task The_output_of_the_first_command_begins_as_the_README_shows()
    {
        string readme = File.ReadAllText(Path.Combine(CliProcess.Root, "README.md"));
        Match shown = Output().Match(readme);
        CliResult result = await InProcess.Run(
            "check",
            Path.Combine(CliProcess.Root, "shared", "bulb-list.csv"),
            "--fuse",
            "15A"
        );
        Assert.Contains("-- check shared/bulb-list.csv --fuse 15A\n", readme, StringComparison.Ordinal);
        Assert.True(shown.Groups[1].Length > 0);
        Assert.StartsWith(shown.Groups[1].Value, result.Output, StringComparison.Ordinal);
        Assert.True(readme.Count(c => c == '\n') <= 200);
    }

    // One program: the README's blocks, then the manual's.
    private static string Documents { get; } =
        File.ReadAllText(Path.Combine(CliProcess.Root, "README.md"))
        + File.ReadAllText(Path.Combine(CliProcess.Root, "Lighting.Calc", "MANUAL.md"));

    private static string Source { get; } =
        File.ReadAllText(Path.Combine(CliProcess.Root, "Lighting.Calc.Tests", "Examples", "LibraryExamples.cs"));

    private static string WithoutUsings(string block) => Using().Replace(block, "").Trim();

    private static string Dedented(string region) =>
        string.Join('\n', region.Split('\n').Select(l => l.Length > 8 ? l[8..] : l.TrimStart())).Trim();

    [GeneratedRegex(@"^```csharp\n(.*?)^```$", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Block();

    [GeneratedRegex(@"^Its verdict begins\n```\n(.*?)^```$", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Output();

    [GeneratedRegex(@"^ +// README: [a-z]+\n(.*?)^ +// end$", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Region();

    [GeneratedRegex(@"^using [\w.]+;$", RegexOptions.Multiline)]
    private static partial Regex Using();
}
