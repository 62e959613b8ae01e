namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>Labels in a grid with lines to cut along, to wrap round a wire's end.</summary>
internal static class HtmlLabels
{
    public static void Render(Markup page, LabelSheet sheet)
    {
        page.Open("ul", ("class", "labels"), ("aria-label", "Labels to cut out"));
        foreach ((string mark, string text) in sheet.Labels)
            page.Open("li").Element("strong", mark).Open("span").Lines(UnitText.Bound(text)).Close().Close();
        page.Close();
    }
}
