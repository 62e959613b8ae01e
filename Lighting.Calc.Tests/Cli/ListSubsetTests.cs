namespace Lighting.Calc.Tests.Cli;

/// <summary>A demo bike of which some lists are missing: every command in every format answers, or says what is
/// wrong.</summary>
public class ListSubsetTests
{
    // Every command that takes a bike, with what it cannot do without.
    private static readonly string[][] s_commands =
    [
        ["check"],
        ["load"],
        ["fuse"],
        ["fuse", "--ways", "2"],
        ["drop"],
        ["wire"],
        ["loom"],
        ["compare", "--fuse", "10A"],
        ["charging"],
        ["swap"],
        ["readings"],
        ["faults"],
        ["diagram"],
    ];
    private static readonly string[] s_formats = ["text", "csv", "json", "html", "svg"];

    public static TheoryData<string> Bikes => ["valley-twin", "chapel-single", "fell-lightweight"];

    /// <summary>Lamps alone, and all lists but the wires.</summary>
    [Theory]
    [MemberData(nameof(Bikes))]
    public Task A_bike_without_wires_is_answered(string bike) =>
        Try(
            bike,
            lists =>
                lists is [_]
                || lists.Length == 4
                    && !lists.Contains("runs.csv")
                    && lists.Contains("bike.csv")
                    && lists.Contains("switches.csv"),
            ["text", "html"]
        );

    [Theory]
    [Trait("time", "long")]
    [MemberData(nameof(Bikes))]
    public Task A_bike_of_any_of_its_lists_is_answered(string bike) => Try(bike, _ => true, s_formats);

    private static async Task Try(string bike, Func<string[], bool> isTried, string[] formats)
    {
        string[] others =
        [
            .. Directory
                .GetFiles(CliProcess.Bike(bike))
                .Where(f => Path.GetFileName(f) != "lamps.csv")
                .Order(StringComparer.Ordinal),
        ];
        var wrong = new List<string>();
        for (uint kept = 0; kept < 1u << others.Length; kept++)
        {
            string[] lists =
            [
                Path.Combine(CliProcess.Bike(bike), "lamps.csv"),
                .. others.Where((_, i) => (kept >> i & 1) == 1),
            ];
            if (!isTried([.. lists.Select(l => Path.GetFileName(l))]))
                continue;
            using var folder = new TemporaryFolder();
            foreach (string list in lists)
                File.Copy(list, Path.Combine(folder.Path, Path.GetFileName(list)));
            foreach (string[] command in s_commands)
                foreach (string format in formats.Where(f => f != "svg" || command[0] == "diagram"))
                {
                    CliResult result = await InProcess.Run(
                        [command[0], folder.Path, .. command[1..], "--format", format]
                    );
                    bool isAnswered =
                        result.ExitCode is 0 or 1 && result.Output.Length > 0
                        || result.ExitCode == 2 && (format == "json" ? result.Output : result.Errors).Length > 0;
                    if (!isAnswered)
                        wrong.Add(
                            $"{string.Join(' ', command)} --format {format} of "
                                + $"{string.Join(", ", lists.Select(Path.GetFileName))}: {result.ExitCode} "
                                + $"{result.Errors}"
                        );
                }
        }

        Assert.True(wrong.Count == 0, $"{wrong.Count} not answered:\n{string.Join("\n", wrong.Take(20))}");
    }
}
