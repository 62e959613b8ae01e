using System.Collections.Immutable;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The published tables.</summary>
internal static class TablesDocument
{
    private const string SourceColumn = "source";

    private static readonly Columns<PublishedTable> s_table = new()
    {
        { "table", "table", t => t.Name },
        { "rows", "rows", t => t.Rows.Length },
        { "columns", "columns", t => string.Join(", ", t.Columns.Where(c => c != SourceColumn)) },
    };

    public static Document OfAll() =>
        new(
            "Published tables",
            "'lighting-calc tables TABLE' prints one with its sources.",
            null,
            () => [s_table.Table(PublishedTable.Names.Select(PublishedTable.Load), isMain: true)],
            json =>
                json.Write("tables", s_table.Only("table", "rows"), PublishedTable.Names.Select(PublishedTable.Load))
        );

    public static Document Of(PublishedTable table)
    {
        int source = table.Columns.IndexOf(SourceColumn);
        string[] sources = [.. table.Rows.Select(r => r[source]).Distinct()];
        // On a page the rows name their source by a number: the same one stands on many rows.
        Columns<ImmutableArray<string>> whole = new(),
            shown = new();
        foreach ((int index, string name) in table.Columns.Index())
        {
            whole.Add(name, name, r => r[index]);
            if (index != source && table.Rows.Any(r => r[index].Length > 0))
                shown.Add(name.Replace('_', ' '), name, r => r[index]);
        }

        shown.Add("source", SourceColumn, r => Number(r[source]));
        var numbered = new Columns<string> { { "", "number", Number }, { "source", SourceColumn, s => s } };
        return new Document(
            $"Table: {table.Name}",
            $"{table.Rows.Length} rows, {sources.Length} sources.",
            null,
            () =>
                [
                    shown.Table(table.Rows),
                    new Heading("Sources"),
                    numbered.Table(sources),
                    whole.Spreadsheet(table.Rows),
                ],
            json =>
            {
                json.Write("table", table.Name);
                json.Write("rows", whole, table.Rows);
            }
        );

        Cell Number(string text) => $"[{Array.IndexOf(sources, text) + 1}]";
    }
}
