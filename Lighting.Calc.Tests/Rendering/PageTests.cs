using System.Xml.Linq;
using Lighting.Calc.Cli.Rendering;
using Lighting.Calc.Cli.Rendering.Html;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Rendering;

/// <summary>Every command's page: well formed, whole in one file, readable without seeing it.</summary>
public class PageTests
{
    private static readonly string[] s_headings = ["h1", "h2", "h3", "h4"];

    public static TheoryData<string, string> CommandPages
    {
        get
        {
            var pages = new TheoryData<string, string>();
            foreach (string bike in Directory.GetDirectories(CliProcess.Bike("")).Order(StringComparer.Ordinal))
                foreach (string command in new[] { "check", "diagram" })
                    pages.Add(command, Path.GetFileName(bike));
            foreach (string command in new[] { "load", "fuse", "drop", "charging", "wire", "swap", "readings" })
                pages.Add(command, "valley-twin");
            pages.Add("faults", "fell-lightweight");
            foreach (string bike in new[] { "valley-twin", "chapel-single" })
                pages.Add(new TheoryDataRow<string, string>("faults", bike).WithTrait("time", "long"));
            pages.Add("readings", "fell-lightweight");
            pages.Add("tables", "");
            return pages;
        }
    }

    [Theory]
    [MemberData(nameof(CommandPages))]
    public async Task A_page_is_whole_in_itself_and_accessible(string command, string bike)
    {
        string text =
            bike.Length == 0
                ? await Pages.Text(command, "--format", "html")
                : await Pages.Text(command, CliProcess.Bike(bike), "--format", "html");
        XElement page = Pages.Read(text);
        Assert.StartsWith("<!DOCTYPE html>", text, StringComparison.Ordinal);
        Assert.Equal("en", page.Attribute("lang")?.Value);
        if (command == "readings")
            page.Descendants().Single(e => e.Local() == "script").Remove();
        AssertSelfContained(page, text);
        AssertHeadingsInOrder(page);
        AssertTablesHaveHeaders(page);
        AssertPicturesHaveWords(page);
    }

    [Theory]
    [InlineData("valley-twin")]
    [InlineData("chapel-single")]
    public async Task The_verdict_comes_first_and_says_what_text_says(string bike)
    {
        string text = await Pages.Text("check", CliProcess.Bike(bike));
        XElement main = Pages
            .Read(await Pages.Text("check", CliProcess.Bike(bike), "--format", "html"))
            .Descendants("main")
            .Single();
        XElement[] first = [.. main.Elements().Take(5)];
        Assert.Equal("h1", first[0].Local());
        Assert.StartsWith("verdict ", first[1].Attribute("class")?.Value, StringComparison.Ordinal);
        string verdict = text[
            (text.IndexOf('\n', StringComparison.Ordinal) + 1)..text.IndexOf("\n\n", StringComparison.Ordinal)
        ];
        Assert.Equal(Words(verdict), Words(first[1].Value));
        Assert.Equal(["figures", "fields", "safety"], first[2..].Select(e => e.Attribute("class")?.Value));
    }

    [Fact]
    public async Task A_check_shows_fuses_lamps_losses_charging_the_ride_and_the_circuit()
    {
        XElement page = Pages.Read(await Pages.Text("check", CliProcess.Bike("valley-twin"), "--format", "html"));
        string[] titles =
        [
            .. page.Descendants(Pages.Svg + "title").Concat(page.Descendants("figcaption")).Select(t => t.Value),
        ];
        foreach (
            string start in new[]
            {
                "Light and charging over engine speed",
                "Continuous load of each fuse",
                "Voltage at each lamp",
                "Light of each lamp",
                "Voltage drop from the source",
                "Output beyond the average load over engine speed",
                "State of charge",
                "Circuit in the setting",
            }
        )
            Assert.Contains(titles, t => t.StartsWith(start, StringComparison.Ordinal));
        XElement balance = page.Descendants(Pages.Svg + "svg")
            .Single(s =>
                s.Element(Pages.Svg + "title")?.Value == "Output beyond the average load over engine speed"
            );
        Assert.Contains(balance.Descendants(Pages.Svg + "text"), t => t.Value == "most: 1950 rpm");
        // The twin's curve begins at 1000 rpm: below it nothing is known and no line drawn.
        Assert.Equal("1000", balance.Elements(Pages.Svg + "text").First().Value);
        // A stacked bar's segments are as long as the ledger's figures: headlamp high loses 0.40 V of the 0.69 V
        // allowed.
        XElement bar = page.Descendants("figure")
            .Single(f => f.Element("figcaption")?.Value == "Voltage drop from the source to each lamp and back")
            .Elements("div")
            .Single(d => d.Element("span")!.Value == "headlamp high")
            .Element(Pages.Svg + "svg")!;
        double length = bar.Elements(Pages.Svg + "rect")
            .Where(r => r.Attribute("class")!.Value.StartsWith("segment", StringComparison.Ordinal))
            .Sum(r => Share(r.Attribute("width")!.Value));
        double allowed = Share(bar.Elements(Pages.Svg + "line").Last().Attribute("x1")!.Value);
        Assert.Equal(0.40 / 0.69, length / allowed, 0.01);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("drop")]
    [InlineData("fuse")]
    [InlineData("load")]
    [InlineData("charging")]
    [InlineData("diagram")]
    public async Task Markup_in_a_name_is_shown_as_text(string command)
    {
        using var folder = new TemporaryFolder();
        Pages.WriteHostileBike(folder);
        string text = await Pages.Text(command, folder.Path, "--format", "html");
        XElement page = Pages.Read(text);
        Assert.DoesNotContain(page.Descendants(), e => e.Local() is "script" or "img" or "b" or "i" or "u");
        Assert.DoesNotContain(page.Descendants().Attributes(), a =>
            a.Name.LocalName.StartsWith("on", StringComparison.Ordinal)
            || a.Name.LocalName == "src"
            || a.Name.LocalName == "href" && !a.Value.StartsWith("#s", StringComparison.Ordinal)
        );
        Assert.Contains(Pages.Hostile[0], page.Value, StringComparison.Ordinal);
        Assert.DoesNotContain(Pages.Hostile[0], text, StringComparison.Ordinal);
        AssertSelfContained(page, text);
    }

    // By hand: 7.15 A of a 15 A scale on 40 places are 19 marks, 11.25 A are at place 30, 15 A at 40.
    [Fact]
    public async Task Text_draws_the_fuses_as_bars()
    {
        string text = await Pages.Text("check", CliProcess.Bike("valley-twin"));
        Assert.Contains(
            $"\n main  {new string('#', 19)}{new string(' ', 11)}|{new string(' ', 9)}|\n       | continuous limit, | "
                + $"rating\n",
            text,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_line_breaks_where_nothing_is_known()
    {
        var chart = new LineChart(
            "t",
            "d",
            "x",
            "y",
            [new ChartLine("l", [new(0, 1), new(1, 2), new(2, null), new(3, 4), new(4, 5)])],
            [],
            0,
            5
        );
        var output = new StringWriter();
        HtmlRenderer.Render(new Document("t", "v", null, () => [chart], _ => { }), output);
        XElement path = Pages
            .Read(output.ToString())
            .Descendants(Pages.Svg + "path")
            .Single(p => p.Attribute("class")?.Value == "line l0");
        Assert.Equal("M0,800 L250,600 M750,200 L1000,0", path.Attribute("d")?.Value);
    }

    [Fact]
    public async Task A_sheet_of_readings_has_a_field_to_fill_in_for_each()
    {
        XElement page = Pages.Read(
            await Pages.Text(
                "readings",
                CliProcess.Bike("valley-twin"),
                "--when",
                "ignition=on; lights=main; dip=low; brake=off; indicators=off",
                "--format",
                "html"
            )
        );
        XElement[] blanks = [.. page.Descendants("td").Where(d => d.Attribute("class")?.Value == "blank")];
        Assert.True(blanks.Length > 20, $"{blanks.Length}");
        // What the lists do not say to an ohmmeter has a line to write on.
        string[] labels =
        [
            .. blanks.Select(b => b.Elements().First().Attribute("aria-label")?.Value).OfType<string>(),
        ];
        Assert.True(labels.Length > blanks.Length - 3, $"{labels.Length} of {blanks.Length}");
        Assert.Equal(labels.Length, labels.Distinct().Count());
        Assert.Contains(labels, l => l.StartsWith("meter, tail feed, ", StringComparison.Ordinal));
        Assert.Contains(labels, l => l.StartsWith("ammeter, main, ", StringComparison.Ordinal));
        Assert.DoesNotContain("____", page.Value, StringComparison.Ordinal);
        Assert.Contains("Save as readings.csv", page.Value, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Bars_of_letters_are_for_the_terminal_and_a_page_has_the_chart()
    {
        Assert.Contains(
            "++++++++",
            await Pages.Text("charging", CliProcess.Bike("valley-twin")),
            StringComparison.Ordinal
        );
        XElement page = Pages.Read(await Pages.Text("charging", CliProcess.Bike("valley-twin"), "--format", "html"));
        Assert.DoesNotContain("++", page.Value, StringComparison.Ordinal);
        Assert.Contains(page.Descendants(Pages.Svg + "title"), t =>
            t.Value.StartsWith("Output beyond the average load", StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task A_figure_and_its_unit_stay_together_on_a_page()
    {
        string page = await Pages.Text("fuse", CliProcess.Bike("chapel-single"), "--format", "html"),
            text = Pages.Read(page).Value;
        Assert.Matches(@"\d\u00A0ms; it brings \d+\u00A0A²s", text);
        Assert.DoesNotMatch(
            @"\d (V|A|ms|AWG)\b",
            string.Concat(
                Pages.Read(page).Descendants().Where(e => e.Local() is "p" or "td" or "span").Select(e => e.Value)
            )
        );
    }

    [Fact]
    [Trait("time", "long")]
    public async Task A_page_of_faults_ranks_them_says_what_speaks_against_and_what_to_test_next()
    {
        using var folder = new TemporaryFolder();
        string readings = folder.Write(
            "r.csv",
            "when,point,instrument,reading\nignition=on; lights=park,rear return,meter,1.9\nignition=on; "
                + "lights=park,tail lamp,visual,good\nignition=on; brake=on,stop lamp,visual,dim\n"
        );
        XElement main = Pages
            .Read(await Pages.Text("faults", CliProcess.Bike("valley-twin"), readings, "--format", "html"))
            .Descendants("main")
            .Single();
        string text = await Pages.Text("faults", CliProcess.Bike("valley-twin"), readings);
        Assert.Equal(
            ["Likeliest first", "Next test", "How to measure"],
            main.Elements().Where(e => e.Local() == "h2").Select(e => e.Value).Where(h => h != "Findings")
        );
        string verdict = text[
            (text.IndexOf('\n', StringComparison.Ordinal) + 1)..text.IndexOf("\n\n", StringComparison.Ordinal)
        ];
        Assert.Equal(
            Words(verdict),
            Words(main.Elements().Single(e => e.Attribute("class")?.Value == "verdict").Value)
        );
        Assert.Contains("rear earth", main.Value, StringComparison.Ordinal);
        Assert.Contains("Conflicting: ", main.Value, StringComparison.Ordinal);
        Assert.Equal(
            ["reading", "likely", "meaning"],
            main.Descendants("table").First().Descendants("th").Take(3).Select(h => h.Value)
        );
    }

    [Fact]
    public async Task A_drawing_alone_is_well_formed_and_escapes_names()
    {
        using var folder = new TemporaryFolder();
        Pages.WriteHostileBike(folder);
        XElement drawing = Pages.Read(await Pages.Text("diagram", folder.Path));
        Assert.Equal(Pages.Svg + "svg", drawing.Name.ToString());
        Assert.All(drawing.Descendants(), e => Assert.Equal("http://www.w3.org/2000/svg", e.Name.NamespaceName));
        Assert.DoesNotContain(drawing.Descendants(), e => e.Local() is "script" or "image" or "foreignObject" or "a");
        Assert.Contains("alert(1)", drawing.Value, StringComparison.Ordinal);
        Assert.DoesNotContain("var(", drawing.Value, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_drawing_follows_the_setting_asked_for()
    {
        XElement drawing = Pages.Read(
            await Pages.Text("diagram", CliProcess.Bike("valley-twin"), "--when", "ignition=on; lights=park")
        );
        string[] live =
        [
            .. drawing
                .Elements(Pages.Svg + "text")
                .Where(t => t.Attribute("class")?.Value == "label live")
                .Select(t => string.Join(' ', t.Elements().Select(e => e.Value))),
        ];
        Assert.Contains("tail lamp", live);
        Assert.DoesNotContain("headlamp low", live);
        Assert.DoesNotContain("stop lamp", live);
    }

    private static void AssertSelfContained(XElement page, string text)
    {
        Assert.DoesNotContain(page.Descendants(), e =>
            e.Local()
                is "script"
                    or "link"
                    or "iframe"
                    or "object"
                    or "embed"
                    or "img"
                    or "image"
                    or "use"
                    or "base"
                    or "form"
        );
        Assert.DoesNotContain(page.Descendants().Attributes(), a =>
            a.Name.LocalName is "src" or "srcset" or "action" or "data"
        );
        // The list of contents leads to the page's own sections.
        string[] sections = [.. page.Descendants("h2").Attributes("id").Select(a => "#" + a.Value)];
        Assert.All(page.Descendants().Attributes("href"), a => Assert.Contains(a.Value, sections));
        Assert.DoesNotContain(
            "://",
            text.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("@import", text, StringComparison.Ordinal);
        // What url() is left names a pattern of the page's own.
        string[] own = [.. page.Descendants().Attributes("id").Select(a => $"url(#{a.Value})")];
        Assert.All(
            page.Descendants()
                .Attributes()
                .Where(a => a.Value.Contains("url(", StringComparison.Ordinal) && a.Name.LocalName == "fill"),
            a => Assert.Contains(a.Value, own)
        );
        Assert.DoesNotContain("url(", page.Descendants("style").Single().Value, StringComparison.Ordinal);
    }

    private static void AssertHeadingsInOrder(XElement page)
    {
        int[] levels = [.. page.Descendants().Select(e => Array.IndexOf(s_headings, e.Local())).Where(l => l >= 0)];
        Assert.Equal(0, levels[0]);
        Assert.Single(levels, l => l == 0);
        Assert.All(levels.Zip(levels.Skip(1)), pair => Assert.True(pair.Second <= pair.First + 1));
    }

    private static void AssertTablesHaveHeaders(XElement page)
    {
        foreach (XElement table in page.Descendants("table"))
        {
            XElement[] heads = [.. table.Element("thead")!.Element("tr")!.Elements()];
            Assert.All(heads, h =>
                Assert.True(
                    h.Local() == "th" && h.Attribute("scope")?.Value == "col" && h.Value.Length > 0,
                    h.ToString()
                )
            );
            Assert.All(table.Element("tbody")!.Elements("tr"), row =>
            {
                Assert.Equal(heads.Length, row.Elements().Count());
                Assert.Equal("row", row.Elements().First().Attribute("scope")?.Value);
            });
            Assert.True(table.Element("caption")?.Value.Length > 0);
            XElement frame = table.Parent!;
            Assert.StartsWith("scroll", frame.Attribute("class")?.Value, StringComparison.Ordinal);
            // What is a tab stop says what it is.
            Assert.Equal(frame.Attribute("tabindex") is not null, frame.Attribute("aria-label")?.Value.Length > 0);
        }
    }

    private static void AssertPicturesHaveWords(XElement page)
    {
        string[] ids = [.. page.Descendants().Attributes("id").Select(a => a.Value)];
        Assert.Distinct(ids);
        foreach (
            XElement picture in page.Descendants(Pages.Svg + "svg")
                .Where(s => s.Parent!.Name.NamespaceName.Length == 0 && s.Attribute("aria-hidden") is null)
        )
        {
            Assert.Equal("img", picture.Attribute("role")?.Value);
            Assert.True(
                picture.Element(Pages.Svg + "title")?.Value.Length > 0
                    && picture.Element(Pages.Svg + "desc")?.Value.Length > 0,
                picture.ToString()
            );
            Assert.All(picture.Attribute("aria-labelledby")!.Value.Split(' '), id => Assert.Contains(id, ids));
        }
    }

    private static string Words(string text) =>
        string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static double Share(string text) =>
        double.Parse(text.TrimEnd('%'), System.Globalization.CultureInfo.InvariantCulture);
}
