using System.Globalization;

namespace Lighting.Calc.Tests.Cli;

/// <summary>
/// An embedder's program may run in any culture. These are made by hand, because the tests run without the system's
/// cultures; <c>test-in-cultures.sh</c> runs all tests in real ones where the system has them.
/// </summary>
public class CultureTests
{
    public static TheoryData<string, string, string, string> Results
    {
        get
        {
            var data = new TheoryData<string, string, string, string>();
            foreach ((string decimalSign, string group, string minus) in new[] { (",", ".", "-"), ("\u066b", "\u066c", "\u061c-"), (",", "\u00a0", "\u2212"), ("/", "'", "neg ") })
                data.Add(decimalSign, group, minus, "check");
            foreach (string command in new[] { "load", "fuse", "drop", "wire", "charging", "swap", "readings", "diagram" })
                data.Add(",", ".", "\u2212", command);
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Results))]
    public async Task A_result_is_the_same_in_every_form(string decimalSign, string group, string minus, string command)
    {
        foreach (string bike in new[] { "valley-twin", "chapel-single", "fell-lightweight" })
        {
            foreach (string format in new[] { "text", "csv", "json", "html" })
            {
                string[] words = [command, CliProcess.Bike(bike), "--format", format];
                CliResult plain = await InProcess.Run(words);
                CliResult there = await Within(Culture(decimalSign, group, minus), () => InProcess.Run(words));
                Assert.Equal(plain, there);
            }
        }
    }

    [Fact]
    public async Task Options_and_tables_are_read_and_written_the_same()
    {
        CultureInfo culture = Culture(",", ".", "\u2212");
        foreach (string[] words in new string[][]
        {
            ["drop", "--current", "8.5A", "--length", "1.8m", "--wire", "1.5 mm2", "--volts", "12.6V", "--temperature", "-20.5"],
            ["wire", "--current", "8.5A", "--length", "1.8m", "--volts", "12.6V"],
            ["check", CliProcess.Bike("valley-twin"), "--fuse", "7.5 A", "--volts", "13.8 V"],
            ["load", CliProcess.Bike("valley-twin"), "--volts", "13,8 V"],
            ["tables"], ["tables", "lamps"], ["tables", "constants", "--format", "json"],
        })
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

    private static CultureInfo Culture(string decimalSign, string group, string minus)
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        NumberFormatInfo numbers = culture.NumberFormat;
        numbers.NumberDecimalSeparator = numbers.PercentDecimalSeparator = numbers.CurrencyDecimalSeparator = decimalSign;
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
