using System.Text.Json;
using System.Text.RegularExpressions;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Rendering;

/// <summary>Pages in a real browser: no message, no overflow, labels clear of each other and of lines, as many printed
/// pages as they should be.</summary>
[Trait("time", "long")]
public partial class BrowserTests
{
    // 640 px is a screen of 1280 px at 200 % zoom, 320 px one at 400 %.
    private static readonly int[] s_widths = [320, 360, 640, 800, 1280];

    // Measures the page in frames of several widths, each as wide as a screen would be.
    private const string Measure = """
        const measured = [];
        for (const frame of document.querySelectorAll('iframe')) {
          const inner = frame.contentDocument, width = inner.documentElement.clientWidth;
          const texts = [...inner.querySelectorAll('.drawing text')].map(t => ({ text: t.textContent, box: t.getBoundingClientRect() })).filter(t => t.box.width > 0);
          const lines = [...inner.querySelectorAll('.drawing line')].map(l => l.getBoundingClientRect()).filter(l => l.width + l.height > 0);
          const hits = (a, b) => a.left < b.right - 0.5 && b.left < a.right - 0.5 && a.top < b.bottom - 0.5 && b.top < a.bottom - 0.5;
          const overlaps = [];
          texts.forEach((a, i) => {
            for (const b of texts.slice(i + 1)) if (hits(a.box, b.box)) overlaps.push(a.text + ' / ' + b.text);
            for (const l of lines) if (hits(a.box, { left: l.left - 1, right: l.right + 1, top: l.top - 1, bottom: l.bottom + 1 })) overlaps.push(a.text + ' / line');
          });
          // Whatever does not scroll in a frame of its own ends within the screen.
          const wide = [...inner.querySelectorAll('main *')].filter(e => !e.closest('.scroll > *') && e.getBoundingClientRect().right > width + 1 && !e.closest('.unseen'))
            .map(e => e.tagName + ' ' + (e.textContent || '').slice(0, 40));
          measured.push({ width, scroll: inner.documentElement.scrollWidth, texts: texts.length, overlaps, wide });
        }
        const result = document.createElement('pre');
        result.id = 'result';
        result.textContent = JSON.stringify(measured);
        document.body.append(result);
        """;

    public static TheoryData<string> Bikes => [
            "valley-twin",
            "chapel-single",
            "hostile",
            "40 points",
            "40 lamps",
            "three-phase",
            "old-twin",
            "generated",
        ];

    [Theory]
    [MemberData(nameof(Bikes))]
    public async Task A_page_fits_every_screen_and_its_labels_are_clear(string bike)
    {
        Browser.SkipWhereThereIsNone();
        using var folder = new TemporaryFolder();
        string page = await Pages.Text("check", PageBikes.PathOf(bike, folder), "--format", "html");
        foreach (JsonElement screen in OnScreens(folder, page))
            Assert.True(screen.GetProperty("texts").GetInt32() > 5);
    }

    [Theory]
    [InlineData("readings", "valley-twin")]
    [InlineData("readings", "fell-lightweight")]
    [InlineData("faults", "valley-twin")]
    [InlineData("faults", "chapel-single")]
    [InlineData("faults", "hostile")]
    public async Task A_page_of_readings_or_faults_fits_every_screen(string command, string bike)
    {
        Browser.SkipWhereThereIsNone();
        using var folder = new TemporaryFolder();
        string[] symptom =
            command == "faults" && bike == "valley-twin" ? ["--symptom", "tail lamp dark, headlamp low good"] : [];
        OnScreens(folder, await Pages.Text([command, PageBikes.PathOf(bike, folder), "--format", "html", .. symptom]));
    }

    // Opens a page in all widths: no message, nothing wider than the screen, no label over another.
    private static JsonElement[] OnScreens(TemporaryFolder folder, string page)
    {
        string file = folder.Write("frames.html", Pages.Framed(page, Measure, [.. s_widths.Select(w => (w, 4000))]));
        (string output, string[] console) = Browser.Open(folder, file, "--window-size=1400,4000", "--dump-dom");
        Assert.Empty(console);
        var measured = JsonDocument.Parse(System.Net.WebUtility.HtmlDecode(Result().Match(output).Groups[1].Value));
        JsonElement[] screens = [.. measured.RootElement.EnumerateArray()];
        Assert.Equal(s_widths, screens.Select(s => s.GetProperty("width").GetInt32()));
        foreach (JsonElement screen in screens)
        {
            Assert.Equal(screen.GetProperty("width").GetInt32(), screen.GetProperty("scroll").GetInt32());
            Assert.Equal("[]", screen.GetProperty("wide").GetRawText());
            Assert.Equal("[]", screen.GetProperty("overlaps").GetRawText());
        }

        return screens;
    }

    // A4 is 794 by 1123 CSS pixels; its margins leave 1000 of them at least.
    [Theory]
    [InlineData("valley-twin")]
    [InlineData("chapel-single")]
    public async Task Light_over_engine_speed_is_on_the_first_sheet(string bike)
    {
        Browser.SkipWhereThereIsNone();
        using var folder = new TemporaryFolder();
        string page = await Pages.Text("check", CliProcess.Bike(bike), "--format", "html");
        const string Bottom = """
            const inner = document.querySelector('iframe').contentDocument;
            const title = [...inner.querySelectorAll('svg title')].find(t => t.textContent.startsWith('Light and charging over engine speed'));
            const result = document.createElement('pre');
            result.id = 'result';
            result.textContent = title ? JSON.stringify(title.closest('svg').getBoundingClientRect().bottom) : 'none';
            document.body.append(result);
            """;
        string file = folder.Write("first.html", Pages.Framed(page, Bottom, (794, 1123)));
        (string output, string[] console) = Browser.Open(folder, file, "--window-size=1000,1400", "--dump-dom");
        Assert.Empty(console);
        Assert.InRange(
            double.Parse(Result().Match(output).Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture),
            100,
            1040
        );
    }

    // A phone of 390 by 844 pixels: what is asked first is there before anybody scrolls.
    [Theory]
    [InlineData("valley-twin")]
    [InlineData("old-twin")]
    [InlineData("three-phase")]
    public async Task The_first_screen_of_a_phone_has_bike_verdict_and_the_three_figures(string bike)
    {
        Browser.SkipWhereThereIsNone();
        using var folder = new TemporaryFolder();
        string page = await Pages.Text("check", PageBikes.PathOf(bike, folder), "--format", "html");
        const string Seen = """
            const inner = document.querySelector('iframe').contentDocument;
            const seen = [...inner.querySelectorAll('h1, .verdict, .figures > li')].filter(e => e.getBoundingClientRect().bottom < 844);
            const result = document.createElement('pre');
            result.id = 'result';
            result.textContent = JSON.stringify(seen.map(e => e.className || e.tagName));
            document.body.append(result);
            """;
        string file = folder.Write("phone.html", Pages.Framed(page, Seen, (390, 844)));
        (string output, string[] console) = Browser.Open(folder, file, "--window-size=600,1000", "--dump-dom");
        Assert.Empty(console);
        string[] seen = JsonSerializer.Deserialize<string[]>(
            System.Net.WebUtility.HtmlDecode(Result().Match(output).Groups[1].Value)
        )!;
        Assert.Equal(5, seen.Length);
    }

    [Fact]
    public void The_measuring_sees_overflow_overlap_and_messages()
    {
        Browser.SkipWhereThereIsNone();
        using var folder = new TemporaryFolder();
        const string Bad =
            "<html><body><main><p style='width:900px'>wide</p><svg class='drawing' width='100' height='50'><text x='5' "
            + "y='20'>one</text><text x='8' y='22'>two</text><line x1='0' x2='50' y1='18' y2='18' "
            + "stroke='black'/></svg></main></body></html>";
        string file = folder.Write(
            "bad.html",
            $"<!DOCTYPE html><html><body><iframe style=\"border:0;width:360px\" "
                + $"srcdoc=\"{Bad}\"></iframe><script>console.error('seen'); addEventListener('load', () => {{ "
                + $"{Measure} "
                + $"}});</script></body></html>"
        );
        (string output, string[] console) = Browser.Open(folder, file, "--dump-dom");
        Assert.Single(console);
        string result = System.Net.WebUtility.HtmlDecode(Result().Match(output).Groups[1].Value);
        Assert.Contains("P wide", result, StringComparison.Ordinal);
        Assert.Contains("one / two", result, StringComparison.Ordinal);
        Assert.Contains("one / line", result, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public async Task The_circuit_of_forty_points_prints_each_of_its_sheets_on_a_page(string paper)
    {
        Browser.SkipWhereThereIsNone();
        using var folder = new TemporaryFolder();
        string page = await Pages.Text("diagram", PageBikes.PathOf("40 points", folder), "--format", "html");
        int sheets = page.Split("<figure class=\"sheet-of-many\">").Length - 1;
        Assert.InRange(sheets, 2, 6);
        // The drawing's sheets alone: what stands before and after them is not printed.
        string file = folder.Write(
            "page.html",
            page.Replace(
                "</style>",
                $"@page {{ size: {paper}; }} @page sheet {{ size: {paper}; }} "
                    + $"@page circuit {{ size: {paper} landscape; }} main > :not(.circuit) {{ "
                    + $"display: none; }}</style>",
                StringComparison.Ordinal
            )
        );
        Assert.Equal(sheets, Print(folder, file).Length);
    }

    private static (double Width, double Height)[] Print(TemporaryFolder folder, string file)
    {
        string pdf = Path.Combine(folder.Path, "page.pdf");
        (_, string[] console) = Browser.Open(folder, file, "--no-pdf-header-footer", $"--print-to-pdf={pdf}");
        Assert.Empty(console);
        string text = File.ReadAllText(pdf, System.Text.Encoding.Latin1);
        return [.. Sheet().Matches(text).Select(m => (Points(m.Groups[1].Value), Points(m.Groups[2].Value)))];
    }

    private static double Points(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    [GeneratedRegex("<pre id=\"result\">(.*?)</pre>", RegexOptions.Singleline)]
    private static partial Regex Result();

    [GeneratedRegex(@"/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]")]
    private static partial Regex Sheet();
}
