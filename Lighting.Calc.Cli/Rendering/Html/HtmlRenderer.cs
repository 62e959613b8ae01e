namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>A document as one self-contained page: no network, no script, nothing outside the file.</summary>
internal static class HtmlRenderer
{
    // The page may load and run nothing at all; only its own style sheet holds.
    private const string Policy = "default-src 'none'; style-src 'unsafe-inline'";

    public static void Render(Document document, TextWriter output)
    {
        var page = new Markup();
        page.Open("html", ("lang", "en")).Open("head");
        page.Void("meta", ("charset", "utf-8"));
        page.Void("meta", ("http-equiv", "Content-Security-Policy"), ("content", Policy));
        page.Void("meta", ("name", "viewport"), ("content", "width=device-width, initial-scale=1"));
        page.Void("meta", ("name", "color-scheme"), ("content", "light dark"));
        page.Element("title", document.Title);
        page.Open("style").Own(StyleSheet.OfPages).Close();
        page.Close();
        page.Open("body").Open("main");
        page.Element("h1", document.Title);
        Verdict(page, document);
        foreach (Block block in document.Lead())
            Render(page, block, document.Title);
        Fields(page, document.Fields);
        if (document.Cautions is { } cautions)
            Render(page, cautions, document.Title);
        string section = document.Title;
        foreach (Block block in PageOnly.Shown(document.Blocks()))
        {
            if (block is Heading heading)
                section = heading.Text;
            Render(page, block, section);
        }

        page.Close().Close().Close();
        output.Write("<!DOCTYPE html>\n");
        output.Write(VisibleText.Of(page.ToString()!, keepLines: true));
        output.Write('\n');
    }

    // One paragraph; what it says first, it says loudest.
    private static void Verdict(Markup page, Document document)
    {
        string verdict = document.SignedVerdict;
        string[] lines = verdict.Split('\n');
        page.Open(
            "p",
            (
                "class",
                document.Outcome switch
                {
                    BikeVerdict.Suits => "verdict suits",
                    BikeVerdict.DoesNotSuit => "verdict fails",
                    BikeVerdict.NotJudged => "verdict open",
                    _ => "verdict",
                }
            )
        );
        if (lines.Length > 1)
            page.Element("strong", UnitText.Bound(lines[0])).Text(UnitText.Bound(" " + string.Join(' ', lines[1..])));
        else
            page.Text(UnitText.Bound(verdict));
        page.Close();
    }

    private static void Fields(Markup page, IReadOnlyList<string> titles)
    {
        if (titles.Count == 0)
            return;
        page.Open("ul", ("class", "fields"), ("aria-label", "To be written in"));
        foreach (string title in titles)
            page.Open("li").Text(title).Element("span", "", ("class", "rule"), ("aria-hidden", "true")).Close();
        page.Close();
    }

    private static void Render(Markup page, KeyFigures figures)
    {
        page.Open("ul", ("class", "figures"), ("aria-label", "Key figures"));
        foreach (KeyFigure figure in figures.Figures)
        {
            (string kind, string sign) = figure.Outcome switch
            {
                BikeVerdict.Suits => ("suits", "✔ suits"),
                BikeVerdict.DoesNotSuit => ("fails", "✖ does not suit"),
                _ => ("open", "! not judged"),
            };
            page.Open("li", ("class", kind))
                .Element("span", figure.Title, ("class", "name"))
                .Text(" ")
                .Element("span", UnitText.Bound(figure.Value), ("class", "large"))
                .Text(" ")
                .Element("span", UnitText.Bound(figure.Limit), ("class", "limit"))
                .Text(" ")
                .Element("strong", sign)
                .Close();
        }

        page.Close();
    }

    private static void Render(Markup page, WorkList work)
    {
        page.Open("ol", ("class", "work"));
        foreach (VerdictCause cause in work.Causes)
        {
            page.Open("li")
                .Element("span", "", ("class", "box"), ("aria-hidden", "true"))
                .Text(" ")
                .Element("strong", UnitText.Bound(cause.Text));
            if (cause.Remedy is { } remedy)
                page.Void("br").Text(UnitText.Bound(remedy));
            page.Close();
        }

        page.Close();
    }

    private static void Written(Markup page, string text)
    {
        string[] parts = text.Split(CommonBlocks.Blank);
        for (int i = 0; i < parts.Length; i++)
        {
            if (i > 0)
                HtmlTable.Blank(page);
            page.Lines(parts[i]);
        }
    }

    private static void Render(Markup page, Block block, string section)
    {
        switch (block)
        {
            case SpreadsheetOnly:
                break;
            case SideBySide side:
                page.Open("div", ("class", "beside"));
                foreach (Block part in side.Blocks)
                    Render(page, part, section);
                page.Close();
                break;
            case Heading heading:
                page.Element("h2", heading.Text);
                break;
            case Paragraph paragraph:
                page.Open("p");
                Written(page, UnitText.Bound(paragraph.Text));
                page.Close();
                break;
            case CautionList cautions:
                page.Open("ul", ("class", "safety"), ("aria-label", "Cautions"));
                foreach (string caution in cautions.Texts)
                    page.Element("li", UnitText.Bound(caution));
                page.Close();
                break;
            case KeyFigures figures:
                Render(page, figures);
                break;
            case WorkList work:
                Render(page, work);
                break;
            case Table table:
                HtmlTable.Render(page, table, section);
                break;
            case BarChart bars:
                HtmlBars.Render(page, bars);
                break;
            case StackedBarChart bars:
                HtmlStackedBars.Render(page, bars);
                break;
            case LineChart lines:
                HtmlLineChart.Render(page, lines);
                break;
            case LabelSheet labels:
                HtmlLabels.Render(page, labels);
                break;
            case CircuitBlock circuit:
                SvgCircuit.Render(page, circuit);
                break;
            default:
                throw new InvalidOperationException($"No page form for {block.GetType().Name}.");
        }
    }
}
