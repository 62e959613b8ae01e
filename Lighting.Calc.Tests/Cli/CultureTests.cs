using System.Globalization;

namespace Lighting.Calc.Tests.Cli;

/// <summary>
/// An embedder's program may run in any culture. These are made by hand, because the tests run without the system's
/// cultures; <c>test-in-cultures.sh</c> runs all tests in real ones where the system has them.
/// </summary>
public class CultureTests
{
    private static readonly string[] s_commands =
    [
        "load",
        "fuse",
        "drop",
        "wire",
        "charging",
        "swap",
        "readings",
        "diagram",
    ];

    public static TheoryData<string, string, string, string, string> Results =>
        [
            .. new[]
            {
                (",", ".", "-"),
                ("\u066b", "\u066c", "\u061c-"),
                (",", "\u00a0", "\u2212"),
                ("/", "'", "neg "),
            }.Select(s => Row(s, "check", "chapel-single")),
            .. s_commands.Select(c => Row((",", ".", "\u2212"), c, "chapel-single")),
            .. s_commands
                .Append("check")
                .SelectMany(c =>
                    new[] { "valley-twin", "fell-lightweight" }.Select(b =>
                        Row((",", ".", "\u2212"), c, b).WithTrait("time", "long")
                    )
                ),
        ];

    [Theory]
    [MemberData(nameof(Results))]
    public async Task A_result_is_the_same_in_every_form(
        string decimalSign,
        string group,
        string minus,
        string command,
        string bike
    )
    {
        foreach (string format in new[] { "text", "csv", "json", "html" })
        {
            string[] words = [command, CliProcess.Bike(bike), "--format", format];
            CliResult plain = await InProcess.Run(words);
            CliResult there = await Within(Culture(decimalSign, group, minus), () => InProcess.Run(words));
            Assert.Equal(plain, there);
        }
    }

    [Fact]
    public async Task Options_and_tables_are_read_and_written_the_same()
    {
        CultureInfo culture = Culture(",", ".", "\u2212");
        foreach (
            string[] words in new string[][]
            {
                [
                    "drop",
                    "--current",
                    "8.5A",
                    "--length",
                    "1.8m",
                    "--wire",
                    "1.5 mm2",
                    "--volts",
                    "12.6V",
                    "--temperature",
                    "-20.5",
                ],
                ["wire", "--current", "8.5A", "--length", "1.8m", "--volts", "12.6V"],
                ["check", CliProcess.Bike("valley-twin"), "--fuse", "7.5 A", "--volts", "13.8 V"],
                ["load", CliProcess.Bike("valley-twin"), "--volts", "13,8 V"],
                ["tables"],
                ["tables", "lamps"],
                ["tables", "constants", "--format", "json"],
            }
        )
            Assert.Equal(await InProcess.Run(words), await Within(culture, () => InProcess.Run(words)));
    }

    [Fact]
    public async Task The_reason_why_a_lamp_has_no_LED_is_the_same()
    {
        using var folder = new TemporaryFolder();
        folder.Write("bike.csv", "item,value\nsystem voltage,6.5\n");
        folder.Write("lamps.csv", "circuit,lamp,code\nstop,stop lamp,P21W\n");
        CliResult there = await Within(Culture(",", ".", "-"), () => InProcess.Run("swap", folder.Path, "--all-led"));
        Assert.Equal(await InProcess.Run("swap", folder.Path, "--all-led"), there);
        Assert.Contains("6.5 V", there.Output + there.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_cultures_of_these_tests_do_change_what_careless_code_prints() =>
        Assert.Equal("\u22121,5", await Within(Culture(",", ".", "\u2212"), () => Task.FromResult($"{-1.5}")));

    private static TheoryDataRow<string, string, string, string, string> Row(
        (string Decimal, string Group, string Minus) signs,
        string command,
        string bike
    ) => new(signs.Decimal, signs.Group, signs.Minus, command, bike);

    private static CultureInfo Culture(string decimalSign, string group, string minus)
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        NumberFormatInfo numbers = culture.NumberFormat;
        numbers.NumberDecimalSeparator =
            numbers.PercentDecimalSeparator =
            numbers.CurrencyDecimalSeparator =
                decimalSign;
        numbers.NumberGroupSeparator = numbers.PercentGroupSeparator = numbers.CurrencyGroupSeparator = group;
        numbers.NegativeSign = minus;
        numbers.NaNSymbol = "¤¤¤";
        culture.TextInfo.ListSeparator = ";";
        return culture;
    }

    private static async Task<T> Within<T>(CultureInfo culture, Func<Task<T>> work)
    {
        (CultureInfo earlier, CultureInfo earlierUi) = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = culture;
            return await work();
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (earlier, earlierUi);
        }
    }
}
