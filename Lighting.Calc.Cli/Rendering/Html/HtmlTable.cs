namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>A table on a page: every column and row has a header cell; one too wide for the screen scrolls in its own
/// frame.</summary>
internal static class HtmlTable
{
    private static readonly string[] s_severities = ["fault", "caution", "note"];

    // A table of so few rows is not parted between two printed sheets.
    private const int ShortRows = 8;

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

        int[] shown =
        [
            .. Enumerable.Range(0, table.Columns.Count).Where(i => table.Columns[i] is not { Title: "", Key: "" }),
        ];
        page.Open("div", ("class", "scroll"), ("tabindex", "0"), ("role", "region"), ("aria-label", section));
        page.Open("table", ("class", table.Rows.Count <= ShortRows ? "short" : null)).Open("thead").Open("tr");
        foreach (int i in shown)
            Head(page, table.Columns[i]);
        page.Close().Close().Open("tbody");
        foreach (IReadOnlyList<Cell> row in table.Rows)
        {
            page.Open("tr");
            foreach (int i in shown)
                Cell(page, table.Columns[i], row[i], isFirst: i == 0);
            page.Close();
        }

        page.Close().Close().Close();
    }

    // A column that needs no title for those who see it still has one for those who do not.
    private static void Head(Markup page, Column column)
    {
        page.Open("th", ("scope", "col"), ("class", column.IsNumber ? "number" : null));
        if (column.Title.Length > 0)
            page.Text(column.Title);
        else
            page.Element("span", column.Key, ("class", "unseen"));
        page.Close();
    }

    /// <summary>A line to write on and a box to tick.</summary>
    public static void Blank(Markup page)
    {
        page.Element("span", "to be written in", ("class", "unseen"))
            .Element("span", "", ("class", "entry"), ("aria-hidden", "true"));
        page.Element("span", "", ("class", "box"), ("aria-hidden", "true")).Text(" as expected");
    }

    private static void Cell(Markup page, Column column, Cell cell, bool isFirst)
    {
        if (cell.Text == CommonBlocks.Blank)
        {
            page.Open("td", ("class", "blank"));
            Blank(page);
            page.Close();
            return;
        }

        string? kind =
            column.IsNumber ? "number"
            : column.Key == "severity" && s_severities.Contains(cell.Text) ? cell.Text
            : column.Key == "verdict"
                ? (
                    cell.Text == "suits" ? "good"
                    : cell.Text == "not judged" ? "caution"
                    : "fault"
                )
            : null;
        page.Open(isFirst ? "th" : "td", ("scope", isFirst ? "row" : null), ("class", kind))
            .Lines(UnitText.Bound(cell.Text))
            .Close();
    }
}
