using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace Lighting.Calc.Tests.Cli;

/// <summary>
/// What every command prints for the demo bikes, frozen: exit status and SHA-256 of each output, and the keys of all
/// JSON. Every change shows as a change of two files.
/// </summary>
public class GoldenTests(GoldenOutputs outputs) : IClassFixture<GoldenOutputs>
{
    private const string Regenerate =
        "Where that is meant: LIGHTING_CALC_WRITE_GOLDEN=1 dotnet test -p:LongTests=true --filter GoldenTests, then "
        + "look at what changed.";

    private static readonly bool s_writes = Environment.GetEnvironmentVariable("LIGHTING_CALC_WRITE_GOLDEN") == "1";

    public static TheoryData<string> Formats => [.. GoldenLines.Formats];

    [Theory]
    [MemberData(nameof(Formats))]
    public async Task Outputs_are_the_frozen_ones(string format) =>
        await CompareOutputs(GoldenLines.In(format, slow: false).Select(l => l.Line));

    [Theory]
    [MemberData(nameof(Formats), Traits = ["time", "long"])]
    public async Task Outputs_of_slow_commands_are_the_frozen_ones(string format) =>
        await CompareOutputs(GoldenLines.In(format, slow: true).Select(l => l.Line));

    [Fact]
    public async Task Drawings_and_help_are_the_frozen_ones()
    {
        Assert.SkipUnless(Console.IsOutputRedirected, "On a terminal help is as wide as the terminal.");
        await CompareOutputs(GoldenLines.Others);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true, Traits = ["time", "long"])]
    public async Task JSON_has_the_frozen_keys(bool slow)
    {
        var now = new SortedSet<string>(StringComparer.Ordinal);
        foreach ((string line, string shape) in GoldenLines.In("json", slow))
            foreach (JsonElement root in GoldenJson.Roots((await outputs.Of(line)).Output))
                GoldenJson.AddPaths(root, $"{shape}: ", now);
        string[] shapes = [.. GoldenLines.In("json", slow).Select(l => $"{l.Shape}: ")];
        Compare(
            "json-keys.txt",
            now,
            line => shapes.Any(s => line.StartsWith(s, StringComparison.Ordinal)),
            line => line
        );
    }

    [Fact]
    public void Every_frozen_line_is_compared()
    {
        if (!s_writes)
            Assert.Equal(GoldenLines.All, File.ReadAllLines(PathOf("outputs.txt")).Select(CommandOf));
    }

    private async Task CompareOutputs(IEnumerable<string> lines)
    {
        var now = new List<string>();
        foreach (string line in lines)
        {
            CliResult result = await outputs.Of(line);
            string output = line.EndsWith(" --format json", StringComparison.Ordinal)
                ? GoldenJson.Rounded(result.Output)
                : result.Output;
            now.Add(
                $"{result.ExitCode} "
                    + $"{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(output + result.Errors)))} "
                    + $"{line}"
            );
        }

        var compared = lines.ToHashSet();
        string[] order = [.. GoldenLines.All];
        Compare(
            "outputs.txt",
            now,
            line => compared.Contains(CommandOf(line)),
            line =>
                Array
                    .IndexOf(order, CommandOf(line))
                    .ToString("0000", System.Globalization.CultureInfo.InvariantCulture)
        );
    }

    // Compares a part of a frozen file, or writes that part of it.
    private static void Compare(
        string file,
        IEnumerable<string> now,
        Func<string, bool> isOfPart,
        Func<string, string> order
    )
    {
        string[] frozen = File.ReadAllLines(PathOf(file));
        if (s_writes)
        {
            File.WriteAllLines(
                PathOf(file),
                frozen.Where(l => !isOfPart(l)).Concat(now).OrderBy(order, StringComparer.Ordinal)
            );
            return;
        }

        string[] part = [.. frozen.Where(isOfPart)],
            gone = [.. part.Except(now)],
            added = [.. now.Except(part)];
        Assert.True(
            gone.Length + added.Length == 0,
            $"{file} differs.\nFrozen:\n  {string.Join("\n  ", gone)}\nNow:\n  "
                + $"{string.Join("\n  ", added)}\n{Regenerate}"
        );
    }

    // "0 89ab… check shared/bikes/valley-twin --format text"
    private static string CommandOf(string line) => line.Split(' ', 3)[2];

    private static string PathOf(string file) =>
        Path.Combine(CliProcess.Root, "Lighting.Calc.Tests", "Cli", "Golden", file);
}
