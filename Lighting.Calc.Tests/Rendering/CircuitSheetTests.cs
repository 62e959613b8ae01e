using Lighting.Calc.Cli.Rendering.Drawing;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Rendering;

/// <summary>A circuit on printed sheets: letters large enough to read, nothing over them, and every conductor found
/// again where it goes on.</summary>
public class CircuitSheetTests
{
    // Seven and a half points in millimetres.
    private const double LeastLetter = 7.5 * 25.4 / 72;

    public static TheoryData<int, int> Harnesses =>
        [
            new(1, 40),
            .. new TheoryDataRow<int, int>[]
            {
                new(2, 40),
                new(3, 40),
                new(4, 40),
                new(5, 40),
                new(6, 90),
                new(7, 40),
                new(8, 60),
            }.Select(r => r.WithTrait("time", "long")),
        ];

    [Fact]
    public void The_twin_stands_on_one_sheet_in_letters_of_seven_and_a_half_points_in_every_setting()
    {
        Assert.True(BikeLists.Read(CliProcess.Bike("valley-twin")).TryGetValue(out BikeLists? lists));
        HarnessSolver solver = new HarnessNetwork(lists.Bike).CreateSolver();
        foreach (Setting setting in SettingEnumeration.Of(lists.Bike, Condition.Always))
        {
            CircuitDrawing sheet = Assert.Single(CircuitSheets.Of(CircuitGraph.Of(lists.Bike, solver.Solve(setting))));
            Assert.True(LetterMillimetres(sheet) >= LeastLetter, $"{LetterMillimetres(sheet)} mm in {setting}");
        }
    }

    [Theory]
    [InlineData("chapel-single")]
    [InlineData("fell-lightweight")]
    public void The_smaller_bikes_stand_on_one_sheet(string bike)
    {
        Assert.True(BikeLists.Read(CliProcess.Bike(bike)).TryGetValue(out BikeLists? lists));
        CircuitDrawing sheet = Assert.Single(CircuitSheets.Of(Graph(lists.Bike)));
        Assert.InRange(LetterMillimetres(sheet), LeastLetter, 5);
    }

    // What A4 (210 mm by 297 mm) and Letter (216 mm by 279 mm) have in common, less 8 mm at the sides and 12 mm above
    // and below.
    [Theory]
    [MemberData(nameof(Harnesses))]
    public void Letters_of_a_large_harness_are_seven_and_a_half_points_on_A4_and_on_Letter(int seed, int points)
    {
        IReadOnlyList<CircuitDrawing> sheets = CircuitSheets.Of(Graph(LargeHarness.Of(seed, points)));
        Assert.InRange(sheets.Count, 2, points / 4);
        foreach (CircuitDrawing sheet in sheets)
        {
            Assert.True(LetterMillimetres(sheet) >= LeastLetter, $"{LetterMillimetres(sheet)} mm");
            double wide = sheet.Width * sheet.Scale,
                tall = sheet.Height * sheet.Scale;
            (double width, double height) = sheet.IsUpright ? (194.0, 255.0) : (263.0, 186.0);
            Assert.True(wide <= width && tall <= height, $"{wide} mm by {tall} mm");
        }
    }

    [Theory]
    [MemberData(nameof(Harnesses))]
    public void On_no_sheet_does_anything_lie_over_a_label_or_a_mark(int seed, int points)
    {
        foreach (CircuitDrawing sheet in CircuitSheets.Of(Graph(LargeHarness.Of(seed, points))))
        {
            (string Text, Box Box)[] texts =
            [
                .. sheet.Labels.Select(l => (string.Join(' ', l.Lines), l.Bounds)),
                .. sheet.Marks.Select(m => (m.Text, Inside(m.Bounds))),
            ];
            for (int i = 0; i < texts.Length; i++)
            {
                Assert.All(
                    texts.Skip(i + 1),
                    other => Assert.False(texts[i].Box.Overlaps(other.Box), $"'{texts[i].Text}' and '{other.Text}'")
                );
                Assert.All(
                    sheet.Symbols,
                    s => Assert.False(texts[i].Box.Overlaps(Room(s)), $"'{texts[i].Text}' and a symbol")
                );
                Assert.All(
                    sheet.Lines,
                    l => Assert.False(texts[i].Box.Overlaps(Room(l)), $"'{texts[i].Text}' and {l}")
                );
                Assert.True(
                    texts[i].Box is { Left: >= 0, Top: >= 0 }
                        && texts[i].Box.Right <= sheet.Width
                        && texts[i].Box.Bottom <= sheet.Height,
                    $"'{texts[i].Text}' leaves the sheet"
                );
            }
        }
    }

    [Theory]
    [MemberData(nameof(Harnesses))]
    public void Every_mark_is_found_again_on_the_sheet_that_it_names(int seed, int points)
    {
        IReadOnlyList<CircuitDrawing> sheets = CircuitSheets.Of(Graph(LargeHarness.Of(seed, points)));
        var marks = sheets
            .SelectMany(
                (s, i) =>
                    s.Marks.Select(m =>
                        (
                            Sheet: i + 1,
                            Letter: m.Text.Split('→')[0],
                            To: int.Parse(m.Text.Split('→')[1], System.Globalization.CultureInfo.InvariantCulture),
                            m.IsLive
                        )
                    )
            )
            .ToArray();
        Assert.NotEmpty(marks);
        foreach (var mark in marks)
            Assert.Single(
                marks,
                other =>
                    other.Letter == mark.Letter
                    && other.Sheet == mark.To
                    && other.To == mark.Sheet
                    && other.IsLive == mark.IsLive
            );
        Assert.All(marks.GroupBy(m => m.Letter), pair => Assert.Equal(2, pair.Count()));
    }

    // Whichever way it is cut: the same points, parts and joints as the lists have.
    [Theory]
    [InlineData(1, 0, 500, 700)]
    [InlineData(2, 3, 400, 500)]
    [InlineData(3, 4, 300, 400)]
    [InlineData(6, 7, 500, 600)]
    [InlineData(8, 9, 250, 330)]
    public void A_cut_joins_and_parts_nothing(int seed, int layout, double tall, double wide)
    {
        CircuitGraph graph = Graph(LargeHarness.Of(seed, 40));
        CircuitDrawing whole = CircuitLayout.All(graph)[layout].Draw(tall);
        IReadOnlyList<double>? cuts = SheetCutter.Columns(whole, wide);
        Assert.NotNull(cuts);
        Assert.NotEmpty(cuts);
        Assert.NotEmpty(whole.Bands);
        int first = cuts.Count / 2;
        IReadOnlyList<CircuitDrawing> sheets = SheetCutter.Cut(whole, cuts, _ => true, ref first)!;
        Assert.Equal(whole.Labels.Count, sheets.Sum(s => s.Labels.Count));
        Assert.Equal(whole.Symbols.Count, sheets.Sum(s => s.Symbols.Count));
        Assert.Equal(whole.Dots.Count, sheets.Sum(s => s.Dots.Count));
        var nets = new SheetNets(whole, cuts, sheets);
        Assert.Distinct(Enumerable.Range(0, graph.Points.Count).Select(nets.OfPoint));
        Assert.All(
            graph.Parts,
            part =>
                Assert.Equal(
                    new[] { nets.OfPoint(part.From), nets.OfPoint(part.To) }.Order(),
                    nets.OfEnds(part.Number).Order()
                )
        );
    }

    // A conductor ends at its mark.
    private static Box Inside(Box box) => new(box.Left + 0.6, box.Top + 0.6, box.Right - 0.6, box.Bottom - 0.6);

    private static double LetterMillimetres(CircuitDrawing drawing) => LabelText.Size * drawing.Scale;

    private static CircuitGraph Graph(Bike bike)
    {
        var setting = new Setting(
            SettingEnumeration.SwitchesOf(bike).Select(s => new SwitchPosition(s.Name, s.Positions[^1]))
        );
        return CircuitGraph.Of(bike, new HarnessNetwork(bike).CreateSolver().Solve(setting));
    }

    private static Box Room(DrawnLine line) => new(line.X1 - 0.5, line.Y1 - 0.5, line.X2 + 0.5, line.Y2 + 0.5);

    private static Box Room(DrawnSymbol symbol)
    {
        SymbolSize size = SymbolSize.Of(symbol.Kind);
        return new Box(
            symbol.X - size.HalfWidth,
            symbol.Y - size.Above,
            symbol.X + size.HalfWidth,
            symbol.Y + size.Below
        );
    }
}
