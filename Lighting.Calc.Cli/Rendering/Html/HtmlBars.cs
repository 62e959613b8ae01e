namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>Bars against marks: words in HTML, the bar itself a picture as wide as the page, so that words never shrink
/// with it.</summary>
internal static class HtmlBars
{
    public static void Render(Markup page, BarChart chart)
    {
        double most = chart.Bars.SelectMany(b => b.Marks.OfType<double>().Append(b.Value)).DefaultIfEmpty().Max();
        if (most <= 0)
            return;
        double scale = most * 1.02;
        page.Open("figure", ("class", "bars")).Element("figcaption", chart.Title);
        if (chart.Marks.Count > 0)
            Legend(page, chart.Marks);
        foreach (Bar bar in chart.Bars)
        {
            page.Open("div", ("class", "bar"))
                .Element("span", bar.Label, ("class", "name"))
                .Text(" ")
                .Element("span", (IsBeyond(bar) ? "✖ " : "") + UnitText.Bound(bar.Text), ("class", "value"));
            // The words beside it say the same.
            page.OpenHidden(("width", "100%"), ("height", "18"));
            page.Void("rect", ("class", "track"), ("x", "0"), ("y", "3"), ("width", "100%"), ("height", "12"));
            page.Void(
                "rect",
                ("class", "fill"),
                ("x", "0"),
                ("y", "3"),
                ("width", Markup.Share(bar.Value / scale)),
                ("height", "12")
            );
            if (IsBeyond(bar))
                Beyond(page, bar.Limit!.Value / scale, bar.Value / scale, "3", "12");
            for (int i = 0; i < bar.Marks.Count; i++)
                if (bar.Marks[i] is { } mark)
                    Mark(page, i, Markup.Share(mark / scale), "18");
            page.Close().Close();
        }

        page.Close();
    }

    private static bool IsBeyond(Bar bar) => bar.Limit is { } limit && bar.Value > limit;

    /// <summary>A mark across a bar, with a rim that keeps it apart from the bar's colour.</summary>
    public static void Mark(Markup page, int mark, string x, string height)
    {
        page.Void("line", ("class", "rim"), ("x1", x), ("x2", x), ("y1", "0"), ("y2", height));
        page.Void("line", ("class", $"mark m{mark}"), ("x1", x), ("x2", x), ("y1", "0"), ("y2", height));
    }

    /// <summary>Hatches what is beyond a limit.</summary>
    public static void Beyond(Markup page, double from, double to, string y, string height) =>
        page.Void(
            "rect",
            ("class", "beyond"),
            ("fill", "url(#beyond)"),
            ("x", Markup.Share(from)),
            ("y", y),
            ("width", Markup.Share(to - from)),
            ("height", height)
        );

    private static void Legend(Markup page, IReadOnlyList<string> marks)
    {
        page.Open("ul", ("class", "legend"));
        for (int i = 0; i < marks.Count; i++)
        {
            page.Open("li")
                .Open(
                    "svg",
                    ("xmlns", "http://www.w3.org/2000/svg"),
                    ("aria-hidden", "true"),
                    ("width", "12"),
                    ("height", "18")
                );
            Mark(page, i, "6", "18");
            page.Close().Text(" " + marks[i]).Close();
        }

        page.Close();
    }
}
