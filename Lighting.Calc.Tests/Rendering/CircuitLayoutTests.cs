using Lighting.Calc.Cli.Rendering.Drawing;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Rendering;

/// <summary>A drawing is legible and true: nothing lies over a label, every point and part is there, conductors meet
/// only where they are joined.</summary>
public class CircuitLayoutTests
{
    public static TheoryData<string> Bikes =>
        [
            .. DemoBikes(),
            "40 points, 1",
            .. new[] { "40 points, 2", "40 points, 3", "40 points, 4", "40 points, 5", "90 points, 6" }.Select(b =>
                new TheoryDataRow<string>(b).WithTrait("time", "long")
            ),
        ];

    [Theory]
    [MemberData(nameof(Bikes))]
    public void Labels_lie_over_no_label_no_symbol_and_no_line_and_stay_on_the_sheet(string name)
    {
        CircuitDrawing drawing = CircuitLayout.Of(Graph(name));
        Assert.NotEmpty(drawing.Labels);
        Box[] symbols = [.. drawing.Symbols.Select(Room)];
        for (int i = 0; i < drawing.Labels.Count; i++)
        {
            DrawnLabel label = drawing.Labels[i];
            string text = string.Join(' ', label.Lines);
            Assert.All(
                drawing.Labels.Skip(i + 1),
                other =>
                    Assert.False(label.Bounds.Overlaps(other.Bounds), $"'{text}' and '{string.Join(' ', other.Lines)}'")
            );
            Assert.All(
                symbols,
                symbol => Assert.False(label.Bounds.Overlaps(symbol), $"'{text}' and a symbol at {symbol}")
            );
            Assert.All(drawing.Lines, line => Assert.False(label.Bounds.Overlaps(Room(line)), $"'{text}' and {line}"));
            Assert.True(
                label.Bounds is { Left: >= 0, Top: >= 0 }
                    && label.Bounds.Right <= drawing.Width
                    && label.Bounds.Bottom <= drawing.Height,
                $"'{text}' leaves the sheet"
            );
        }
    }

    [Theory]
    [MemberData(nameof(Bikes))]
    public void Every_point_has_its_volts_and_every_part_its_amps(string name)
    {
        CircuitGraph graph = Graph(name);
        CircuitDrawing drawing = CircuitLayout.Of(graph);
        string[] labels =
        [
            .. drawing.Labels.Select(l => string.Concat(l.Lines).Replace(" ", "", StringComparison.Ordinal)),
        ];
        Assert.All(
            graph.Points,
            p => Assert.Contains($"{p.Name}{p.Figures}".Replace(" ", "", StringComparison.Ordinal), labels)
        );
        Assert.All(
            graph.Parts.Where(p => !p.IsLoad),
            p => Assert.Contains($"{p.Name}{p.Figures}".Replace(" ", "", StringComparison.Ordinal), labels)
        );
        Assert.All(
            graph.Parts.Where(p => p.IsLoad),
            p => Assert.Contains(p.Name.Replace(" ", "", StringComparison.Ordinal), labels)
        );
        Assert.Equal(graph.Points.Count, drawing.Dots.Count(d => !d.IsJunction));
        // The source and two earth signs stand for no part, a plain wire has no symbol.
        Assert.Equal(graph.Parts.Count(p => p.Symbol != SymbolKind.Wire) + 3, drawing.Symbols.Count);
    }

    [Theory]
    [MemberData(nameof(Bikes))]
    public void Conductors_join_what_the_lists_join_and_nothing_else(string name)
    {
        CircuitGraph graph = Graph(name);
        CircuitDrawing drawing = CircuitLayout.Of(graph);
        DrawnDot[] points = [.. drawing.Dots.Where(d => !d.IsJunction)];
        // What touches a stroke's end is joined to it; strokes that only cross are not.
        DrawnLine[] leads = [.. drawing.Lines.Where(l => l.Part is null)];
        int[] net = [.. Enumerable.Range(0, points.Length + leads.Length)];
        for (int i = 0; i < leads.Length; i++)
        {
            for (int j = 0; j < i; j++)
                if (Joined(leads[i], leads[j]))
                    Merge(net, points.Length + i, points.Length + j);
            for (int p = 0; p < points.Length; p++)
                if (Holds(leads[i], points[p].X, points[p].Y))
                    Merge(net, points.Length + i, p);
        }

        // Dots stand in the order of the points: each has a net of its own.
        Assert.Distinct(Enumerable.Range(0, points.Length).Select(p => Root(net, p)));
        foreach (CircuitPart part in graph.Parts)
        {
            DrawnLine stroke = Assert.Single(drawing.Lines, l => l.Part == part.Number);
            int[] ends = [NetAt(stroke.X1, stroke.Y1), NetAt(stroke.X2, stroke.Y2)];
            Assert.Equal(new[] { Root(net, part.From), Root(net, part.To) }.Order(), ends.Order());
        }

        int NetAt(double x, double y)
        {
            int[] there =
            [
                .. Enumerable
                    .Range(0, points.Length)
                    .Where(p => Math.Abs(points[p].X - x) < 0.01 && Math.Abs(points[p].Y - y) < 0.01)
                    .Select(p => Root(net, p)),
                .. Enumerable
                    .Range(0, leads.Length)
                    .Where(i => Holds(leads[i], x, y))
                    .Select(i => Root(net, points.Length + i)),
            ];
            return Assert.Single(there.Distinct());
        }
    }

    [Theory]
    [MemberData(nameof(Bikes))]
    public void No_two_conductors_run_on_each_other(string name)
    {
        CircuitDrawing drawing = CircuitLayout.Of(Graph(name));
        DrawnLine[] level = [.. drawing.Lines.Where(l => l.Y1 == l.Y2)];
        for (int i = 0; i < level.Length; i++)
            for (int j = 0; j < i; j++)
                Assert.False(
                    level[i].Y1 == level[j].Y1
                        && Math.Min(level[i].X2, level[j].X2) - Math.Max(level[i].X1, level[j].X1) > 0.01,
                    $"{level[i]} on {level[j]}"
                );
        // Of uprights a live one may lie on its own whole.
        DrawnLine[] upright = [.. drawing.Lines.Where(l => l.X1 == l.X2 && !l.IsLive)];
        for (int i = 0; i < upright.Length; i++)
            for (int j = 0; j < i; j++)
                Assert.False(
                    upright[i].X1 == upright[j].X1
                        && Math.Min(upright[i].Y2, upright[j].Y2) - Math.Max(upright[i].Y1, upright[j].Y1) > -0.01,
                    $"{upright[i]} on {upright[j]}"
                );
    }

    [Fact]
    public void The_live_path_is_strong_and_the_rest_is_faint()
    {
        CircuitDrawing drawing = CircuitLayout.Of(Graph("valley-twin", "ignition=on; lights=main; dip=low"));
        Assert.True(Label(drawing, "headlamp low feed").IsLive);
        Assert.True(Label(drawing, "coil wire").IsLive);
        Assert.False(Label(drawing, "headlamp high").IsLive);
        Assert.False(Label(drawing, "stop lamp").IsLive);
        Assert.Equal(
            ["headlamp low", "ignition coils", "rev counter lamp", "speedometer lamp", "tail lamp"],
            LoadsIn(drawing).Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void A_wire_of_a_known_colour_has_the_code_beside_its_name()
    {
        Bike bike = BikeOf("valley-twin");
        Assert.True(WireColour.TryFind("GNYE", out WireColour? colour));
        Bike coloured = bike with { Runs = [bike.Runs[0] with { Colour = colour }, .. bike.Runs.Skip(1)] };
        CircuitDrawing drawing = CircuitLayout.Of(
            CircuitGraph.Of(
                coloured,
                new HarnessNetwork(coloured)
                    .CreateSolver()
                    .Solve(SettingEnumeration.Held(bike, Condition.Parse("ignition=on")))
            )
        );
        DrawnLabel label = Label(drawing, bike.Runs[0].Name);
        Assert.Equal($"{bike.Runs[0].Name} GNYE", string.Join(' ', label.Lines.SkipLast(1)));
        Assert.Single(drawing.Labels, l => l.Lines.Any(t => t.Contains("GNYE", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_bike_without_runs_is_drawn_on_its_battery()
    {
        using var folder = new TemporaryFolder();
        folder.Write("lamps.csv", "circuit,lamp,code\nstop,stop lamp,P21W\ntail,tail lamp,R5W\n");
        Assert.True(BikeLists.Read(folder.Path).TryGetValue(out BikeLists? lists));
        Bike bike = lists.Bike with
        {
            Fuses = [new Fuse { Name = "main", Rating = UnitsNet.ElectricCurrent.FromAmperes(15) }],
        };
        CircuitDrawing drawing = CircuitLayout.Of(
            CircuitGraph.Of(bike, new HarnessNetwork(bike).CreateSolver().Solve(Setting.Empty))
        );
        Assert.Equal(2, drawing.Symbols.Count(s => s is { Kind: SymbolKind.Lamp, IsLive: true }));
        Assert.Single(drawing.Symbols, s => s.Kind == SymbolKind.Fuse);
    }

    private static IEnumerable<string> LoadsIn(CircuitDrawing drawing) =>
        drawing.Labels.Where(l => l is { IsLive: true, HasFigures: false }).Select(l => string.Join(' ', l.Lines));

    private static DrawnLabel Label(CircuitDrawing drawing, string start) =>
        drawing.Labels.First(l => string.Join(' ', l.Lines).StartsWith(start, StringComparison.Ordinal));

    private static IEnumerable<string> DemoBikes() =>
        Directory.GetDirectories(CliProcess.Bike("")).Select(d => Path.GetFileName(d)!).Order(StringComparer.Ordinal);

    private static CircuitGraph Graph(string name, string when = "")
    {
        Bike bike = BikeOf(name);
        Setting setting =
            when.Length > 0
                ? SettingEnumeration.Held(bike, Condition.Parse(when))
                : new Setting(
                    SettingEnumeration.SwitchesOf(bike).Select(s => new SwitchPosition(s.Name, s.Positions[^1]))
                );
        return CircuitGraph.Of(bike, new HarnessNetwork(bike).CreateSolver().Solve(setting));
    }

    private static Bike BikeOf(string name)
    {
        if (name.Contains(" points, ", StringComparison.Ordinal))
        {
            string[] words = name.Split(" points, ");
            return LargeHarness.Of(
                int.Parse(words[1], System.Globalization.CultureInfo.InvariantCulture),
                int.Parse(words[0], System.Globalization.CultureInfo.InvariantCulture)
            );
        }

        Assert.True(BikeLists.Read(CliProcess.Bike(name)).TryGetValue(out BikeLists? lists));
        return lists.Bike;
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

    private static bool Joined(DrawnLine a, DrawnLine b) =>
        Holds(a, b.X1, b.Y1) || Holds(a, b.X2, b.Y2) || Holds(b, a.X1, a.Y1) || Holds(b, a.X2, a.Y2);

    private static bool Holds(DrawnLine line, double x, double y) =>
        x > line.X1 - 0.01 && x < line.X2 + 0.01 && y > line.Y1 - 0.01 && y < line.Y2 + 0.01;

    private static void Merge(int[] roots, int a, int b) => roots[Root(roots, a)] = Root(roots, b);

    private static int Root(int[] roots, int i)
    {
        while (roots[i] != i)
            i = roots[i];
        return i;
    }
}
