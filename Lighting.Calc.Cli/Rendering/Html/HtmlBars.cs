namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>Bars against marks: words in HTML, the bar itself a picture as wide as the page, so that words never shrink with it.</summary>
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
            page.Open("div", ("class", "bar")).Element("span", bar.Label, ("class", "name")).Text(" ").Element("span", bar.Text, ("class", "value"));
            page.OpenPicture($"{chart.Title}: {bar.Label}", bar.Text, ("width", "100%"), ("height", "18"));
            page.Void("rect", ("class", "track"), ("x", "0"), ("y", "3"), ("width", "100%"), ("height", "12"));
            page.Void("rect", ("class", "fill"), ("x", "0"), ("y", "3"), ("width", Markup.Share(bar.Value / scale)), ("height", "12"));
            for (int i = 0; i < bar.Marks.Count; i++)
                if (bar.Marks[i] is { } mark)
                    page.Void("line", ("class", $"mark m{i}"), ("x1", Markup.Share(mark / scale)), ("x2", Markup.Share(mark / scale)), ("y1", "0"), ("y2", "18"));
            page.Close().Close();
        }

        page.Close();
    }

    private static void Legend(Markup page, IReadOnlyList<string> marks)
    {
        page.Open("ul", ("class", "legend"));
        for (int i = 0; i < marks.Count; i++)
        {
            page.Open("li").Open("svg", ("xmlns", "http://www.w3.org/2000/svg"), ("aria-hidden", "true"), ("width", "12"), ("height", "18"));
            page.Void("line", ("class", $"mark m{i}"), ("x1", "6"), ("x2", "6"), ("y1", "0"), ("y2", "18")).Close();
            page.Text(" " + marks[i]).Close();
        }

        page.Close();
    }
}
