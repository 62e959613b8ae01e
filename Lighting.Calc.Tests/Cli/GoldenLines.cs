namespace Lighting.Calc.Tests.Cli;

/// <summary>The command lines whose outputs are frozen.</summary>
internal static class GoldenLines
{
    private static readonly string[] s_bikes = ["valley-twin", "chapel-single", "fell-lightweight"];

    private static readonly string[] s_ofABike =
    [
        "check BIKE",
        "load BIKE",
        "fuse BIKE",
        "drop BIKE",
        "wire BIKE",
        "loom BIKE",
        "charging BIKE",
        "swap BIKE",
        "fuse BIKE --ways 3",
        "compare BIKE --fuse 10A",
        "readings BIKE",
        "diagram BIKE",
    ];

    private static readonly string[] s_slow =
    [
        "check BIKE --tolerance",
        "faults BIKE",
        "faults BIKE --symptom \"headlamp high dark\"",
        "faults BIKE --symptom \"tail lamp dark\"",
    ];

    private static readonly string[] s_withoutBike =
    [
        "check shared/bikes",
        "compare shared/bikes/chapel-single --system 12V",
        "wire --current 8A --length 1.8m --volts 12V",
        "drop --current 8A --length 1.8m --wire 18AWG --volts 12V",
        "tables",
        "tables lamps",
        "tables lamps H4 --all",
        "wire --measured 28/0.30",
        "tables fuse-ratings",
        "tables led-classes",
        "tables wire-colours",
        "tables constants",
    ];

    /// <summary>The formats that all commands share.</summary>
    public static string[] Formats { get; } = ["text", "csv", "json", "html"];

    /// <summary>Lines of no format: help, and the drawing alone.</summary>
    public static IEnumerable<string> Others { get; } =
    [
        .. s_bikes.Select(b => $"diagram shared/bikes/{b} --format svg"),
        .. new[]
        {
            "",
            "check ",
            "load ",
            "fuse ",
            "drop ",
            "wire ",
            "loom ",
            "charging ",
            "swap ",
            "compare ",
            "readings ",
            "faults ",
            "diagram ",
            "new ",
            "tables ",
        }.Select(c => $"{c}--help"),
    ];

    /// <summary>All lines in the order of the file.</summary>
    public static IEnumerable<string> All =>
        [.. Formats.SelectMany(f => In(f, slow: false).Concat(In(f, slow: true)).Select(l => l.Line)), .. Others];

    /// <summary>Each line of a format, with the form of it that all bikes share.</summary>
    public static IEnumerable<(string Line, string Shape)> In(string format, bool slow) =>
        s_bikes
            .SelectMany(b =>
                (slow ? s_slow : s_ofABike).Select(c =>
                    (c.Replace("BIKE", $"shared/bikes/{b}", StringComparison.Ordinal), c)
                )
            )
            .Concat(slow ? [] : s_withoutBike.Select(c => (c, c)))
            .Select(l => ($"{l.Item1} --format {format}", l.Item2));
}
