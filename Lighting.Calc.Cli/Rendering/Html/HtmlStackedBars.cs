namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>Stacked bars: each kind has a colour and a hatching of its own, so that a black-and-white printer keeps
/// them apart.</summary>
internal static class HtmlStackedBars
{
    public static void Render(Markup page, StackedBarChart chart)
    {
        double scale = 1.02 * chart.Bars.Select(b => b.Segments.Where(s => s > 0).Sum()).Append(chart.Mark).Max();
        if (scale <= 0)
            return;
        page.Open("figure", ("class", "bars")).Element("figcaption", chart.Title);
        Legend(page, chart);
        for (int i = 0; i < chart.Bars.Count; i++)
            Draw(page, chart, chart.Bars[i], scale);
        page.Close();
    }

    private static void Draw(Markup page, StackedBarChart chart, StackedBar bar, double scale)
    {
        page.Open("div", ("class", "bar"))
            .Element("span", bar.Label, ("class", "name"))
            .Text(" ")
            .Element(
                "span",
                (bar.Segments.Where(s => s > 0).Sum() > chart.Mark ? "✖ " : "") + UnitText.Bound(bar.Text),
                ("class", "value")
            );
        // The table of the breakdown says the same.
        page.OpenHidden(("width", "100%"), ("height", "22"));
        page.Void("rect", ("class", "track"), ("x", "0"), ("y", "3"), ("width", "100%"), ("height", "16"));
        double at = 0;
        for (int i = 0; i < bar.Segments.Count; i++)
        {
            if (bar.Segments[i] <= 0)
                continue;
            Segment(page, i, Markup.Share(at / scale), Markup.Share(bar.Segments[i] / scale));
            at += bar.Segments[i];
        }

        if (at > chart.Mark)
            HtmlBars.Beyond(page, chart.Mark / scale, at / scale, "15", "7");
        HtmlBars.Mark(page, 0, Markup.Share(chart.Mark / scale), "22");
        page.Close().Close();
    }

    private static void Segment(Markup page, int kind, string x, string width)
    {
        page.Void("rect", ("class", $"segment k{kind}"), ("x", x), ("y", "3"), ("width", width), ("height", "16"));
        page.Void(
            "rect",
            ("class", "hatch"),
            ("fill", $"url(#h{kind})"),
            ("x", x),
            ("y", "3"),
            ("width", width),
            ("height", "16")
        );
    }

    private static void Legend(Markup page, StackedBarChart chart)
    {
        Hatching.OpenDefinitions(page);
        for (int i = 0; i < chart.Kinds.Count; i++)
            Hatching.Define(page, i);
        page.Close().Close();
        page.Open("ul", ("class", "legend"));
        for (int i = 0; i < chart.Kinds.Count; i++)
        {
            page.Open("li")
                .Open(
                    "svg",
                    ("xmlns", "http://www.w3.org/2000/svg"),
                    ("aria-hidden", "true"),
                    ("width", "28"),
                    ("height", "22")
                );
            Segment(page, i, "0", "28");
            page.Close().Text(" " + chart.Kinds[i]).Close();
        }

        page.Open("li")
            .Open(
                "svg",
                ("xmlns", "http://www.w3.org/2000/svg"),
                ("aria-hidden", "true"),
                ("width", "12"),
                ("height", "22")
            );
        HtmlBars.Mark(page, 0, "6", "22");
        page.Close().Text(" " + chart.MarkText).Close();
        page.Close();
    }
}
