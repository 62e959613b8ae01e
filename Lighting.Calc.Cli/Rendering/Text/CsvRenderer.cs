using System.Globalization;
using CsvHelper;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The main table of a document as CSV (RFC 4180), 12 significant digits, text that looks like a formula made
/// safe for a spreadsheet.</summary>
internal static class CsvRenderer
{
    private static readonly CsvWriterOptions s_options = new() { Injection = CsvInjection.Escape };

    public static void Render(Document document, TextWriter output)
    {
        Table table =
            document
                .Blocks()
                .Select(b => b is SpreadsheetOnly hidden ? hidden.Table : b)
                .OfType<Table>()
                .FirstOrDefault(t => t.IsMain)
            ?? throw new InvalidOperationException($"'{document.Title}' has no main table.");
        using CsvWriter csv = Open(output);
        csv.WriteHeader([.. table.Columns.Select(c => c.Key)]);
        foreach (IReadOnlyList<Cell> row in table.Rows)
            Write(csv, row);
    }

    /// <summary>A writer of such CSV; the output stays open.</summary>
    public static CsvWriter Open(TextWriter output) => CsvWriter.Create(output, s_options, leaveOpen: true);

    /// <summary>Writes one row.</summary>
    public static void Write(CsvWriter csv, IReadOnlyList<Cell> row)
    {
        foreach (Cell cell in row)
        {
            if (cell.Written is double or long)
                csv.WriteField(Convert.ToDouble(cell.Written, CultureInfo.InvariantCulture), default);
            else
                csv.WriteField(
                    cell.Value is string or Setting ? VisibleText.Of(cell.Value.ToString()!, keepLines: true)
                    : cell.Value is null && cell.IsNumber ? ""
                    : cell.Text
                );
        }

        csv.EndRecord();
    }
}
