using System.Globalization;
using Lighting.Calc.Tests.Cli;
using UglyToad.PdfPig.Content;

namespace Lighting.Calc.Tests.Rendering;

/// <summary>The page of a check as it is printed and handed over.</summary>
[Trait("time", "long")]
public class PrintTests
{
    public static TheoryData<string, string> Printed
    {
        get
        {
            var printed = new TheoryData<string, string>();
            foreach (string bike in PageBikes.Names.Append("valley-twin --tolerance --samples 200"))
                foreach (string paper in new[] { "A4", "Letter" })
                    printed.Add(bike, paper);
            return printed;
        }
    }

    [Theory]
    [MemberData(nameof(Printed))]
    public async Task Every_sheet_says_of_which_bike_and_which_of_how_many_it_is_and_is_filled(
        string bike,
        string paper
    )
    {
        Browser.SkipWhereThereIsNone();
        using var folder = new TemporaryFolder();
        string[] words = bike.Split(" --tolerance");
        string[] options = words.Length == 1 ? [] : ["--tolerance", .. words[1].Trim().Split(' ')];
        string page = await Pages.Text(["check", PageBikes.PathOf(words[0], folder), .. options, "--format", "html"]);
        string title = Pages.Read(page).Descendants("h1").Single().Value;
        IReadOnlyList<PrintedSide> sides = PrintedPdf.Of(folder, page, paper).Sides;
        // A bike without runs has no circuit to draw.
        if (page.Contains("class=\"circuit", StringComparison.Ordinal))
            Assert.StartsWith("Circuitinthesetting", sides[1].Body, StringComparison.Ordinal);
        foreach ((int index, PrintedSide side) in sides.Index())
        {
            Assert.StartsWith(side.Header.TrimEnd('…'), PrintedPdf.Squeezed(title), StringComparison.Ordinal);
            Assert.InRange(side.Header.Length, 5, 100);
            Assert.Equal(
                string.Create(CultureInfo.InvariantCulture, $"Page{index + 1}of{sides.Count}"),
                side.Footer
            );
            Assert.All(side.Letters, l => AssertInside(l, side));
            if (index < sides.Count - 1)
                Assert.True(side.Filled >= 1 / 3.0, $"{side.Footer} is filled to {side.Filled:P0}.");
        }
    }

    [Theory]
    [InlineData("diagram", "valley-twin")]
    [InlineData("diagram", "fell-lightweight")]
    [InlineData("drop", "old-twin")]
    [InlineData("readings", "chapel-single")]
    [InlineData("compare", "valley-twin")]
    public async Task No_sheet_of_another_page_holds_a_title_alone(string command, string bike)
    {
        Browser.SkipWhereThereIsNone();
        using var folder = new TemporaryFolder();
        string path = PageBikes.PathOf(bike, folder);
        string[] second = command == "compare" ? [PageBikes.PathOf("three-phase", folder)] : [];
        string page = await Pages.Text([command, path, .. second, "--format", "html"]);
        IReadOnlyList<PrintedSide> sides = PrintedPdf.Of(folder, page, "A4").Sides;
        Assert.All(sides.SkipLast(1), s => Assert.True(s.Filled >= 1 / 3.0, $"{s.Footer} is filled to {s.Filled:P0}."));
        Assert.All(sides, s => Assert.All(s.Letters, l => AssertInside(l, s)));
    }

    // The first sheet, the drawing, and two of tables.
    [Theory]
    [InlineData("valley-twin", "A4", 4)]
    [InlineData("valley-twin", "Letter", 4)]
    [InlineData("chapel-single", "A4", 4)]
    [InlineData("chapel-single", "Letter", 4)]
    [InlineData("fell-lightweight", "A4", 3)]
    public async Task A_check_of_a_bike_like_the_twin_prints_on_four_sheets_and_its_circuit_on_the_second(
        string bike,
        string paper,
        int most
    )
    {
        Browser.SkipWhereThereIsNone();
        using var folder = new TemporaryFolder();
        string page = await Pages.Text("check", CliProcess.Bike(bike), "--format", "html");
        IReadOnlyList<PrintedSide> sides = PrintedPdf.Of(folder, page, paper).Sides;
        Assert.InRange(sides.Count, 1, most);
        Assert.StartsWith("Circuitinthesetting", sides[1].Body, StringComparison.Ordinal);
        (int width, int height) = paper == "A4" ? (595, 842) : (612, 792);
        Assert.All(sides, s =>
            Assert.Equal(
                (width, height),
                ((int)Math.Round(Math.Min(s.Width, s.Height)), (int)Math.Round(Math.Max(s.Width, s.Height)))
            )
        );
    }

    [Theory]
    [InlineData("valley-twin", "A4")]
    [InlineData("valley-twin", "Letter")]
    [InlineData("old-twin", "A4")]
    [InlineData("old-twin", "Letter")]
    public async Task The_first_sheet_answers_alone(string bike, string paper)
    {
        Browser.SkipWhereThereIsNone();
        using var folder = new TemporaryFolder();
        string path = PageBikes.PathOf(bike, folder),
            page = await Pages.Text("check", path, "--format", "html");
        string first = PrintedPdf.Of(folder, page, paper).Sides[0].Body;
        Assert.True(BikeLists.Read(path).TryGetValue(out BikeLists? lists));
        BikeReport report = BikeCheck.Evaluate(
            lists.Bike,
            cancellationToken: TestContext.Current.CancellationToken
        );
        foreach (
            string text in new[]
            {
                lists.Bike.Name,
                report.Headline,
                "Workshop",
                "Customer",
                "Mileage",
                "Date",
                "Signature",
                "Fuse: ",
                "Largest voltage drop: ",
                "Charging covers the usual ride from",
                "Never bridge a fuse",
                "Light and charging over engine speed",
                "engine speed, rpm",
            }
        )
            Assert.Contains(PrintedPdf.Squeezed(text), first, StringComparison.Ordinal);
        if (!report.Causes.IsEmpty)
        {
            int work = first.IndexOf("Work,themostdangerousfirst", StringComparison.Ordinal),
                wire = first.IndexOf("Ignitionfeed", StringComparison.Ordinal),
                fuse = first.IndexOf("Main15A", work, StringComparison.Ordinal);
            // A wire that overheats is more dangerous than a fuse that opens.
            Assert.True(0 < work && work < wire && wire < fuse, first);
        }
    }

    private static void AssertInside(Letter letter, PrintedSide side) =>
        Assert.True(
            letter.Location.X >= 0
                && letter.Location.X + letter.Width <= side.Width
                && letter.Location.Y >= 0
                && letter.Location.Y + letter.PointSize * 0.7 <= side.Height,
            $"'{letter.Value}' is outside its sheet at {letter.Location}."
        );
}
