using System.Globalization;

namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>Lines over an axis: each has a colour, a dash and a marker of its own. Words keep their size at every
/// width.</summary>
internal static class HtmlLineChart
{
    private const int MarkersALine = 6;

    public static void Render(Markup page, LineChart chart)
    {
        ChartPoint[] points = [.. Known(chart), .. chart.Below is { } below ? Known(below) : []];
        if (points.Length < 2)
            return;
        var across = ChartAxis.Over(points.Min(p => p.X), points.Max(p => p.X), 7);
        page.Open("figure", ("class", chart.Below is null ? "chart" : "chart two")).Element("figcaption", chart.Title);
        Panel(page, chart, across);
        if (chart.Below is { } lower)
            Panel(page, lower, across);
        page.Close();
    }

    private static IEnumerable<ChartPoint> Known(LineChart chart) =>
        chart.Lines.SelectMany(l => l.Points).Where(p => p.Y is not null);

    private static void Panel(Markup page, LineChart chart, ChartAxis across)
    {
        double[] heights = [.. Known(chart).Select(p => p.Y!.Value)];
        var upright = ChartAxis.Over(heights.Append(chart.Bottom).Min(), heights.Append(chart.Top).Max(), 6);
        page.Open("div", ("class", "panel"));
        if (chart.Lines.Count > 1)
            Legend(page, chart.Lines);
        page.Element("p", chart.YTitle, ("class", "axis"));
        page.Open("div", ("class", "plot"))
            .OpenPicture(chart.Title, chart.Description, ("width", "100%"), ("height", "260"));
        Grid(page, across, upright);
        for (int i = 0; i < chart.Lines.Count; i++)
            Line(page, chart.Lines[i], i, across, upright);
        int named = 0;
        foreach (ChartMark mark in chart.Marks)
            Mark(page, mark, across, upright, mark.Text.Length > 0 ? named++ : 0);
        page.Close().Close().Element("p", chart.XTitle, ("class", "axis across")).Close();
    }

    private static void Grid(Markup page, ChartAxis across, ChartAxis upright)
    {
        foreach (double x in across.Ticks)
        {
            string at = Markup.Share(across.ShareOf(x));
            page.Void("line", ("class", "grid"), ("x1", at), ("x2", at), ("y1", "0"), ("y2", "100%"));
            page.Element(
                "text",
                across.TextOf(x),
                ("x", at),
                ("y", "100%"),
                ("dy", "1.3em"),
                ("text-anchor", "middle")
            );
        }

        foreach (double y in upright.Ticks)
        {
            string at = Markup.Share(1 - upright.ShareOf(y));
            page.Void("line", ("class", y == 0 ? "zero" : "grid"), ("x1", "0"), ("x2", "100%"), ("y1", at), ("y2", at));
            page.Element("text", upright.TextOf(y), ("x", "-6"), ("y", at), ("dy", "0.35em"), ("text-anchor", "end"));
        }
    }

    private static void Line(Markup page, ChartLine line, int index, ChartAxis across, ChartAxis upright)
    {
        var path = new System.Text.StringBuilder();
        var known = new List<(string X, string Y)>();
        bool isBroken = true;
        foreach (ChartPoint point in line.Points)
        {
            if (point.Y is { } value)
            {
                double x = across.ShareOf(point.X),
                    y = 1 - upright.ShareOf(value);
                path.Append(
                    CultureInfo.InvariantCulture,
                    $"{(isBroken ? 'M' : 'L')}{Markup.Number(1000 * x)},{Markup.Number(1000 * y)} "
                );
                known.Add((Markup.Share(x), Markup.Share(y)));
            }

            isBroken = point.Y is null;
        }

        if (known.Count == 0)
            return;
        page.Open(
            "svg",
            ("width", "100%"),
            ("height", "100%"),
            ("viewBox", "0 0 1000 1000"),
            ("preserveAspectRatio", "none"),
            ("overflow", "visible")
        );
        page.Void(
                "path",
                ("class", $"line l{index % ChartMarker.Count}"),
                ("vector-effect", "non-scaling-stroke"),
                ("d", path.ToString().TrimEnd())
            )
            .Close();
        // Markers of lines that run close together stand at different places.
        int step = Math.Max(1, known.Count / MarkersALine);
        for (int i = Math.Min(index % step, known.Count - 1); i < known.Count; i += step)
            ChartMarker.Draw(page, index, known[i].X, known[i].Y);
    }

    private static void Mark(Markup page, ChartMark mark, ChartAxis across, ChartAxis upright, int level)
    {
        string x = Markup.Share(across.ShareOf(mark.X)),
            y = Markup.Share(1 - upright.ShareOf(mark.Y));
        page.Open("svg", ("x", x), ("y", y), ("overflow", "visible"))
            .Void("path", ("class", "pin"), ("d", "M0,-7 L7,0 L0,7 L-7,0 Z"))
            .Close();
        if (mark.Text.Length == 0)
            return;
        page.Void("line", ("class", "drop"), ("x1", x), ("x2", x), ("y1", y), ("y2", "100%"));
        bool isRight = across.ShareOf(mark.X) > 0.45;
        page.Element(
            "text",
            mark.Text,
            ("class", "said"),
            ("x", x),
            ("y", "100%"),
            ("dx", isRight ? "-6" : "6"),
            ("dy", Markup.Number(-0.6 - 1.3 * level) + "em"),
            ("text-anchor", isRight ? "end" : "start")
        );
    }

    private static void Legend(Markup page, IReadOnlyList<ChartLine> lines)
    {
        page.Open("ul", ("class", "legend"));
        for (int i = 0; i < lines.Count; i++)
        {
            page.Open("li")
                .Open(
                    "svg",
                    ("xmlns", "http://www.w3.org/2000/svg"),
                    ("aria-hidden", "true"),
                    ("width", "52"),
                    ("height", "18")
                );
            page.Void("path", ("class", $"line l{i % ChartMarker.Count}"), ("d", "M2,9 H50"));
            ChartMarker.Draw(page, i, "26", "9");
            page.Close().Text(" " + lines[i].Label).Close();
        }

        page.Close();
    }
}
