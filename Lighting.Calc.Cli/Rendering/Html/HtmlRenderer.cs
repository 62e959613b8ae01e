namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>A document as one self-contained page: no network, nothing outside the file, and no script but that of a
/// page to fill in.</summary>
internal sealed class HtmlRenderer
{
    // The page may load and run nothing at all; only its own style sheet holds.
    private const string Policy = "default-src 'none'; style-src 'unsafe-inline'";

    // A page of so many sections has a list of them.
    private const int ManySections = 5;

    private readonly Markup _page = new();
    private readonly Document _document;
    private string _section;
    private int _sections;

    private HtmlRenderer(Document document) => (_document, _section) = (document, document.Title);

    public static void Render(Document document, TextWriter output)
    {
        var renderer = new HtmlRenderer(document);
        renderer.Render();
        output.Write("<!DOCTYPE html>\n");
        output.Write(VisibleText.Of(renderer._page.ToString()!, keepLines: true));
        output.Write('\n');
    }

    private void Render()
    {
        Block[] lead = [.. PageOnly.Shown(_document.Lead())],
            first = [.. PageOnly.Shown(_document.FirstSheet())],
            rest = [.. PageOnly.Shown((_document.Page ?? _document.Blocks)())];
        _page.Open("html", ("lang", "en")).Open("head");
        _page.Void("meta", ("charset", "utf-8"));
        string policy = _document.IsForm ? Policy + HtmlForm.Policy : Policy;
        _page.Void("meta", ("http-equiv", "Content-Security-Policy"), ("content", policy));
        _page.Void("meta", ("name", "viewport"), ("content", "width=device-width, initial-scale=1"));
        _page.Void("meta", ("name", "color-scheme"), ("content", "light dark"));
        _page.Element("title", _document.Title);
        _page.Open("style").Own(StyleSheet.OfPages + StyleSheet.RunningHeader(_document.Title)).Close();
        _page.Close();
        _page.Open("body");
        Hatching.DefineBeyond(_page);
        _page.Open("main");
        _page.Element("h1", _document.Title);
        Verdict();
        Render(lead);
        Fields();
        if (_document.Cautions is { } cautions)
            Render(cautions);
        Render(first);
        Contents([.. Titles(first)], [.. Titles(rest)]);
        Render(rest);
        if (_document.IsForm)
            HtmlForm.Save(_page);
        _page.Close();
        if (_document.IsForm)
            HtmlForm.Script(_page);
        _page.Close().Close();
    }

    // What it says first, it says loudest.
    private void Verdict()
    {
        string[] lines = _document.SignedVerdict.Split('\n');
        _page.Open(
            "p",
            (
                "class",
                _document.Outcome switch
                {
                    BikeVerdict.Suits => "verdict suits",
                    BikeVerdict.DoesNotSuit => "verdict fails",
                    BikeVerdict.NotJudged => "verdict open",
                    _ => "verdict",
                }
            )
        );
        if (lines.Length > 1)
        {
            _page.Element("strong", UnitText.Bound(lines[0]));
            foreach (string line in lines[1..])
                _page.Text(" ").Void("br").Text(UnitText.Bound(line));
        }
        else
            _page.Text(UnitText.Bound(lines[0]));
        _page.Close();
    }

    private void Fields()
    {
        if (_document.Fields.Count == 0)
            return;
        _page.Open("ul", ("class", "fields"), ("aria-label", "To be written in"));
        foreach (string title in _document.Fields)
            _page.Open("li").Text(title).Element("span", "", ("class", "rule"), ("aria-hidden", "true")).Close();
        _page.Close();
    }

    private static IEnumerable<string> Titles(IEnumerable<Block> blocks) =>
        blocks.SelectMany(b =>
            b switch
            {
                Heading heading => [heading.Text],
                CircuitBlock circuit => [circuit.Title],
                SideBySide side => Titles(side.Blocks),
                ScreenOnly screen => Titles(screen.Blocks),
                _ => Enumerable.Empty<string>(),
            }
        );

    // Those of the first sheet are before it.
    private void Contents(string[] before, string[] after)
    {
        if (before.Length + after.Length < ManySections)
            return;
        _page.Open("nav", ("class", "contents"), ("aria-label", "Contents"))
            .Open("details")
            .Element("summary", "Contents")
            .Open("ol");
        foreach ((int index, string title) in before.Concat(after).Index())
            _page.Open("li").Element("a", title, ("href", $"#{Id(index + 1)}")).Close();
        _page.Close().Close().Close();
    }

    private static string Id(int section) => $"s{Markup.Number(section)}";

    private void Render(KeyFigures figures)
    {
        _page.Open("ul", ("class", "figures"), ("aria-label", "Key figures"));
        foreach (KeyFigure figure in figures.Figures)
        {
            (string kind, string sign) = figure.Outcome switch
            {
                BikeVerdict.Suits => ("suits", $"✔ {figure.Reason ?? "suits"}"),
                BikeVerdict.DoesNotSuit => ("fails", $"✖ {figure.Reason ?? "does not suit"}"),
                _ => ("open", $"! {figure.Reason ?? "not judged"}"),
            };
            _page
                .Open("li", ("class", kind))
                .Element("span", figure.Title, ("class", "name"))
                .Text(" ")
                .Element("span", UnitText.Bound(figure.Value), ("class", "large"))
                .Text(" ")
                .Element("span", UnitText.Bound(figure.Limit), ("class", "limit"))
                .Text(" ")
                .Element("strong", UnitText.Bound(sign))
                .Close();
        }

        _page.Close();
    }

    private void Render(WorkList work)
    {
        _page.Open("ol", ("class", "work"), ("start", work.Start == 1 ? null : Markup.Number(work.Start)));
        foreach ((int index, WorkItem item) in work.Items.Index())
        {
            _page
                .Open("li", ("class", index < work.PrintedItems ? null : "later"))
                .Element("span", "", ("class", "box"), ("aria-hidden", "true"))
                .Text(" ")
                .Element("strong", UnitText.Bound(item.Part))
                .Open("dl");
            Told("Now", item.Now);
            Told("Needed", item.Needed);
            Told("Why", item.Why);
            _page.Close().Close();
        }

        _page.Close();
    }

    private void Told(string term, string text)
    {
        if (text.Length > 0)
            _page.Open("div").Element("dt", term).Element("dd", UnitText.Bound(text)).Close();
    }

    private void Render(OpeningLines lines)
    {
        _page.Open("ul", ("class", "opening"));
        foreach ((string line, string? more) in lines.Lines)
        {
            _page.Open("li", ("class", more is null ? null : "opens"));
            if (more is null)
                _page.Text(UnitText.Bound(line));
            else
                _page
                    .Open("details")
                    .Element("summary", UnitText.Bound(line))
                    .Element("p", UnitText.Bound(more))
                    .Close();
            _page.Close();
        }

        _page.Close();
    }

    private void Written(string text)
    {
        string[] parts = text.Split(CommonBlocks.Blank);
        for (int i = 0; i < parts.Length; i++)
        {
            if (i > 0)
                HtmlTable.Blank(_page);
            _page.Lines(parts[i]);
        }
    }

    private void Render(IEnumerable<Block> blocks)
    {
        foreach (Block block in blocks)
            Render(block);
    }

    private void Render(Block block)
    {
        switch (block)
        {
            case SpreadsheetOnly:
                break;
            case SideBySide side:
                _page.Open("div", ("class", side.IsFirstNarrow ? "beside narrow" : "beside"));
                foreach (Block part in side.Blocks)
                {
                    _page.Open("div");
                    Render(part is SideBySide { Blocks: var stacked } ? stacked : [part]);
                    _page.Close();
                }

                _page.Close();
                break;
            case ScreenOnly screen:
                _page.Open("div", ("class", "screen"));
                Render(screen.Blocks);
                _page.Close();
                break;
            case PrintOnly print:
                _page.Open("div", ("class", "print"));
                Render(print.Blocks);
                _page.Close();
                break;
            case Heading heading:
                _section = heading.Text;
                _page.Element("h2", heading.Text, ("id", Id(++_sections)));
                break;
            case Paragraph { Text.Length: 0 }:
                break;
            case Paragraph paragraph:
                _page.Open("p");
                Written(UnitText.Bound(paragraph.Text));
                _page.Close();
                break;
            case CautionList cautions:
                _page.Open("ul", ("class", "safety"), ("aria-label", "Cautions"));
                foreach (string caution in cautions.Texts)
                    _page.Element("li", UnitText.Bound(caution));
                _page.Close();
                break;
            case KeyFigures figures:
                Render(figures);
                break;
            case WorkList work:
                Render(work);
                break;
            case OpeningLines lines:
                Render(lines);
                break;
            case Table table:
                HtmlTable.Render(_page, table, _section);
                break;
            case BarChart bars:
                HtmlBars.Render(_page, bars);
                break;
            case StackedBarChart bars:
                HtmlStackedBars.Render(_page, bars);
                break;
            case LineChart lines:
                HtmlLineChart.Render(_page, lines);
                break;
            case LabelSheet labels:
                HtmlLabels.Render(_page, labels);
                break;
            case CircuitBlock circuit:
                SvgCircuit.Render(_page, circuit, Id(++_sections));
                break;
            default:
                throw new InvalidOperationException($"No page form for {block.GetType().Name}.");
        }
    }
}
