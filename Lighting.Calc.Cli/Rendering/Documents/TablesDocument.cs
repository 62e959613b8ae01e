using System.Collections.Immutable;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The published tables.</summary>
internal static class TablesDocument
{
    /// <summary>The table of lamps, which has more columns than a page.</summary>
    public const string Lamps = "lamps";

    private const string SourceColumn = "source";

    private static readonly Columns<TableRow> s_lamp = new()
    {
        { "code", "code", r => $"{r.Text("code")} {r.Text("filament")}".TrimEnd() },
        { "use", "use", r => r.Text("use").Replace("|", ", ", StringComparison.Ordinal) },
        { "V", "systemV", r => r.Number("system_v"), "0.#" },
        { "W", "watts", r => Watts(r), "0.#" },
        { "cap", "cap", r => r.Text("cap") },
    };

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

    /// <summary>The lamps on a page of 80 columns; CSV and JSON have every column.</summary>
    public static Document OfLamps(PublishedTable table)
    {
        Columns<ImmutableArray<string>> whole = Whole(table);
        return new Document(
            $"Table: {table.Name}",
            $"{table.Rows.Length} rows. '--all' adds test voltages, light, tolerances and sources; a word filters: "
                + "'tables lamps BA15s'.",
            null,
            () => [s_lamp.Table(table.Read()), whole.Spreadsheet(table.Rows)],
            json =>
            {
                json.Write("table", table.Name);
                json.Write("rows", whole, table.Rows);
            }
        );
    }

    // Of a lamp rated by its current, the power at its design voltage.
    private static double Watts(TableRow row) =>
        row.NumberOrNull("rated_w")
        ?? row.NumberOrNull("reference_w")
        ?? row.Number("reference_v") * row.Number("reference_a");

    private static Columns<ImmutableArray<string>> Whole(PublishedTable table)
    {
        Columns<ImmutableArray<string>> whole = new();
        foreach ((int index, string name) in table.Columns.Index())
            whole.Add(name, name, r => r[index]);
        return whole;
    }

    public static Document Of(PublishedTable table)
    {
        int source = table.Columns.IndexOf(SourceColumn);
        string[] sources = [.. table.Rows.Select(r => r[source]).Distinct()];
        // On a page the rows name their source by a number: the same one stands on many rows.
        Columns<ImmutableArray<string>> whole = Whole(table),
            shown = new();
        foreach ((int index, string name) in table.Columns.Index())
            if (index != source && table.Rows.Any(r => r[index].Length > 0))
                shown.Add(name.Replace('_', ' '), name, r => r[index]);

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
