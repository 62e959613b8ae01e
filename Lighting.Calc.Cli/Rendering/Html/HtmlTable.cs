namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>A table on a page: it has a caption, every column and row a header cell; one too wide for the screen
/// scrolls in its own frame, its first column and what is to be written in staying.</summary>
internal static class HtmlTable
{
    private static readonly string[] s_severities = ["fault", "caution", "note"];

    // A table of so few rows is not parted between two printed sheets.
    private const int ShortRows = 8;

    // What is longer is a sentence, which needs room to be read.
    private const int LongestName = 60;

    // A table wider than the widest page always scrolls and is a tab stop; of others the browser knows whether they do.
    private const int WidestPage = 1200;
    private const double LetterWidth = 8.2;
    private const double CellPadding = 12;

    public static void Render(Markup page, Table table, string section)
    {
        if (table.Columns.Count == 0 || table.Rows.Count == 0)
            return;
        if (table.ShownRows is { } shownRows && table.Rows.Count > shownRows)
        {
            Render(page, table with { Rows = [.. table.Rows.Take(shownRows)] }, section);
            page.Open("details").Element("summary", $"{table.Rows.Count - shownRows} more");
            Table rest = table with { Rows = [.. table.Rows.Skip(shownRows)], ShownRows = null };
            Render(page, rest, $"{section}, the rest");
            page.Close();
            return;
        }

        int[] shown = Shown(table);
        string style = table.IsInColumns ? "scroll columns" : "scroll";
        if (shown.Sum(i => Width(table, i)) > WidestPage)
            page.Open("div", ("class", style), ("tabindex", "0"), ("role", "region"), ("aria-label", section));
        else
            page.Open("div", ("class", style));
        page.Open("table", ("class", table.Rows.Count <= ShortRows ? "short" : null))
            .Element("caption", section, ("class", "unseen"))
            .Open("thead")
            .Open("tr");
        foreach (int i in shown)
            Head(page, table.Columns[i], table.Rows.Any(r => r[i].Text == CommonBlocks.Blank));
        page.Close().Close().Open("tbody");
        HashSet<int> sentences = [.. shown.Where(i => table.Rows.Any(r => r[i].Text.Length > LongestName))];
        foreach (IReadOnlyList<Cell> row in table.Rows)
        {
            page.Open("tr");
            foreach (int i in shown)
                Cell(page, table.Columns[i], row[i], isFirst: i == shown[0], sentences.Contains(i));
            page.Close();
        }

        page.Close().Close().Close();
    }

    // What decides stands beside the name.
    private static int[] Shown(Table table)
    {
        int[] shown =
        [
            .. Enumerable.Range(0, table.Columns.Count).Where(i => table.Columns[i] is not { Title: "", Key: "" }),
        ];
        return
        [
            .. shown
                .Index()
                .OrderBy(i => i.Index == 0 ? 0 : table.Columns[i.Item].Key == "verdict" ? 1 : 2)
                .Select(i => i.Item),
        ];
    }

    private static double Width(Table table, int column) =>
        CellPadding
        + LetterWidth
            * table
                .Rows.Select(r => r[column].Text)
                .Append(table.Columns[column].Title)
                .Max(t => table.Columns[column].IsNumber ? t.Length : t.Split(' ', '\n').Max(w => w.Length));

    // A column that needs no title for those who see it still has one for those who do not.
    private static void Head(Markup page, Column column, bool isBlank)
    {
        page.Open("th", ("scope", "col"), ("class", column.IsNumber ? "number" : isBlank ? "blank" : null));
        if (column.Title.Length > 0)
            page.Text(column.Title);
        else
            page.Element("span", column.Key.Length > 0 ? column.Key : "what", ("class", "unseen"));
        page.Close();
    }

    /// <summary>A line to write on and a box to tick.</summary>
    public static void Blank(Markup page)
    {
        page.Element("span", "to be written in", ("class", "unseen"))
            .Element("span", "", ("class", "entry"), ("aria-hidden", "true"));
        page.Element("span", "", ("class", "box"), ("aria-hidden", "true")).Text(" as expected");
    }

    private static void Cell(Markup page, Column column, Cell cell, bool isFirst, bool isSentence)
    {
        if (cell.Text == CommonBlocks.Blank)
        {
            page.Open("td", ("class", "blank"));
            if (cell.Field is { } field)
                HtmlForm.Field(page, field);
            else
                Blank(page);
            page.Close();
            return;
        }

        (string? kind, string sign) =
            cell.IsBeyond ? ("number beyond", "✖ ")
            : column.IsNumber ? ("number", "")
            : column.Key == "severity" && s_severities.Contains(cell.Text) ? (cell.Text, "")
            : column.Key == "verdict" ? Verdict(cell.Text)
            : isSentence && !isFirst ? ("words", "")
            : (null, "");
        page.Open(isFirst ? "th" : "td", ("scope", isFirst ? "row" : null), ("class", kind))
            .Text(sign)
            .Lines(UnitText.Bound(cell.Text))
            .Close();
    }

    private static (string? Kind, string Sign) Verdict(string text) =>
        text switch
        {
            "suits" => ("good", "✔ "),
            "not judged" => ("caution", "! "),
            "does not suit" or "overloaded" or "too large for the wire" or "will not clear" => ("fault", "✖ "),
            "wrong input" or "program fault" => ("fault", "✖ "),
            _ => (null, ""),
        };
}
