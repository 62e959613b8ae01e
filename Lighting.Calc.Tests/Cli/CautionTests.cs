using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Lighting.Calc.Tests.Rendering;

namespace Lighting.Calc.Tests.Cli;

/// <summary>Cautions stand before the step they belong to, in every form that a person acts on, and fit the
/// bike.</summary>
public partial class CautionTests
{
    private const string Disconnect = "disconnect the battery, its earthed terminal";

    public static TheoryData<string, string> Commands
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (string bike in new[] { "valley-twin", "chapel-single", "fell-lightweight" })
                foreach (
                    string command in new[]
                    {
                        "check",
                        "load",
                        "drop",
                        "wire",
                        "charging",
                        "readings",
                        "faults",
                        "diagram",
                    }
                )
                    data.Add(
                        new TheoryDataRow<string, string>(command, bike).WithTrait(
                            "time",
                            bike != "fell-lightweight" && command is not ("check" or "fuse" or "diagram")
                                ? "long"
                                : "quick"
                        )
                    );
            data.Add("fuse", "valley-twin");
            data.Add("swap", "valley-twin");
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public async Task Text_page_and_JSON_have_the_same_cautions_and_those_of_the_bike(string command, string bike)
    {
        string[] words = [command, CliProcess.Bike(bike)];
        string text = Flat(await Pages.Text([.. words, "--format", "text"]));
        string page = Flat(Pages.Read(await Pages.Text([.. words, "--format", "html"])).Value);
        string[] cautions = Cautions(await Pages.Text([.. words, "--format", "json"]));
        Assert.True(cautions.Length >= 3);
        Assert.Equal(cautions.Length, cautions.Distinct().Count());
        foreach (string caution in cautions)
        {
            Assert.Contains("! " + caution, text, StringComparison.Ordinal);
            Assert.Contains(caution, page, StringComparison.Ordinal);
        }

        bool hasBattery = bike != "fell-lightweight";
        Assert.Equal(hasBattery, cautions.Any(c => c.Contains(Disconnect, StringComparison.Ordinal)));
        Assert.Equal(
            !hasBattery,
            cautions.Any(c => c.Contains("stop the engine and unplug the lighting coil", StringComparison.Ordinal))
        );
        Assert.Equal(hasBattery, cautions.Any(c => c.Contains("explosive gas", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("valley-twin", "(negative)")]
    [InlineData("chapel-single", "(positive)")]
    public async Task The_earthed_terminal_is_named(string bike, string terminal) =>
        Assert.Contains(
            $"{Disconnect} {terminal} first",
            Flat(await Pages.Text("check", CliProcess.Bike(bike))),
            StringComparison.Ordinal
        );

    // The live sheet is read with the battery connected; only the resistance part is not.
    [Theory]
    [InlineData("valley-twin", Disconnect)]
    [InlineData("fell-lightweight", "unplug the lighting coil")]
    public async Task Nothing_over_the_live_sheet_says_to_take_the_supply_off(string bike, string words)
    {
        string sheet = await Pages.Text("readings", CliProcess.Bike(bike));
        int ohms = sheet.IndexOf("\nResistance, ", StringComparison.Ordinal);
        Assert.True(ohms > 0);
        Assert.DoesNotContain("isconnect the battery", sheet[..ohms], StringComparison.Ordinal);
        Assert.DoesNotContain("nplug the", sheet[..ohms], StringComparison.Ordinal);
        Assert.Contains("! Live tests:", sheet[..ohms], StringComparison.Ordinal);
        Assert.Contains(words, Flat(sheet[ohms..]), StringComparison.Ordinal);
    }

    // Of the fuses' figures those above 10 A have the remark, and the caution over all of them.
    [Theory]
    [InlineData("chapel-single", "--volts", "7")]
    [InlineData("valley-twin", "--volts", "14.5")]
    public async Task An_ammeter_beyond_10_A_is_said_at_the_fuse(string bike, params string[] options)
    {
        string sheet = await Pages.Text(["readings", CliProcess.Bike(bike), .. options]);
        double[] highest =
        [
            .. Highest()
                .Matches(Flat(sheet))
                .Select(m => double.Parse(m.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture)),
        ];
        Assert.Contains(highest, a => a > 10);
        Assert.Equal(highest.Count(a => a > 10), Range().Matches(Flat(sheet)).Count - 1);
        Assert.Contains(
            "! Ammeter in a fuse's place: only through an in-line fuse of the same rating",
            Flat(sheet),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task The_drawing_alone_has_them_over_the_circuit()
    {
        XElement svg = Pages.Read(await Pages.Text("diagram", CliProcess.Bike("valley-twin"), "--format", "svg"));
        double top = double.Parse(
            svg.Attribute("viewBox")!.Value.Split(' ')[1],
            System.Globalization.CultureInfo.InvariantCulture
        );
        XElement[] lines =
        [
            .. svg.Descendants(Pages.Svg + "tspan")
                .Where(t =>
                    double.Parse(t.Attribute("y")!.Value, System.Globalization.CultureInfo.InvariantCulture) < 0
                ),
        ];
        Assert.All(
            lines,
            l =>
                Assert.True(
                    double.Parse(l.Attribute("y")!.Value, System.Globalization.CultureInfo.InvariantCulture) > top
                )
        );
        string words = string.Join(' ', lines.Select(l => l.Value));
        foreach (
            string caution in Cautions(await Pages.Text("diagram", CliProcess.Bike("valley-twin"), "--format", "json"))
        )
            Assert.Contains(caution, words, StringComparison.Ordinal);
    }

    private static string[] Cautions(string json) =>
        [.. JsonDocument.Parse(json).RootElement.GetProperty("cautions").EnumerateArray().Select(c => c.GetString()!)];

    private static string Flat(string text) => White().Replace(text, " ");

    [GeneratedRegex(@"\s+")]
    private static partial Regex White();

    [GeneratedRegex(@"Ammeter in place of the main fuse: \d+\.\d+ A \(\d+\.\d+ to (\d+\.\d+)\)")]
    private static partial Regex Highest();

    [GeneratedRegex(@"Up to \d+\.\d+ A expected, above the 10 A range of most meters")]
    private static partial Regex Range();
}
