using System.Collections.Immutable;
using System.Text.Json;
using Lighting.Calc.Tables;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The published tables.</summary>
internal static class TablesDocument
{
    private const string SourceColumn = "source";

    public static Document OfAll() => new("Published tables", "'lighting-calc tables TABLE' prints one with its sources.",
        [
            new Table(
                [new("table", "table"), new("rows", "rows", true), new("columns", "columns")],
                [
                    .. PublishedTable.Names.Select(PublishedTable.Load).Select(t => (IReadOnlyList<Cell>)
                        [t.Name, CommonBlocks.Rating(t.Rows.Length), string.Join(", ", t.Columns.Where(c => c != SourceColumn))]),
                ],
                IsMain: true),
        ]);

    // On a page the rows name their source by a number: the same one stands on many rows.
    public static Document Of(PublishedTable table)
    {
        int source = table.Columns.IndexOf(SourceColumn);
        string[] sources = [.. table.Rows.Select(r => r[source]).Distinct()];
        ImmutableArray<int> shown = [.. Enumerable.Range(0, table.Columns.Length).Where(c => c != source && table.Rows.Any(r => r[c].Length > 0))];
        return new Document($"Table: {table.Name}", $"{table.Rows.Length} rows, {sources.Length} sources.",
            [
                new Table(
                    [.. shown.Select(c => new Column(table.Columns[c].Replace('_', ' '), table.Columns[c])), new Column("source", SourceColumn)],
                    [.. table.Rows.Select(r => (IReadOnlyList<Cell>)[.. shown.Select(c => (Cell)r[c]), $"[{Array.IndexOf(sources, r[source]) + 1}]"])]),
                new Heading("Sources"),
                new Table([new("", "number"), new("source", SourceColumn)], [.. sources.Select((s, i) => (IReadOnlyList<Cell>)[$"[{i + 1}]", s])]),
                new SpreadsheetOnly(new Table(
                    [.. table.Columns.Select(c => new Column(c, c))],
                    [.. table.Rows.Select(r => (IReadOnlyList<Cell>)[.. r.Select(c => (Cell)c)])],
                    IsMain: true)),
            ]);
    }

    public static void WriteAll(Utf8JsonWriter json) => json.Array("tables", PublishedTable.Names.Select(PublishedTable.Load), table =>
    {
        json.WriteString("table", table.Name);
        json.WriteNumber("rows", table.Rows.Length);
    });

    public static void Write(Utf8JsonWriter json, PublishedTable table)
    {
        json.WriteString("table", table.Name);
        json.Array("rows", table.Rows, row =>
        {
            for (int i = 0; i < row.Length; i++)
                json.WriteString(table.Columns[i], row[i]);
        });
    }
}
