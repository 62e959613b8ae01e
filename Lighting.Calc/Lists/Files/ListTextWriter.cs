using CsvHelper;

namespace Lighting.Calc;

/// <summary>Writes rows as CSV text: comma, quotes where needed, a line feed after each row. The column of remarks, the
/// last, is left out where there are none.</summary>
internal static class ListTextWriter
{
    public static string Write(ListSchema schema, IEnumerable<string[]> rows)
    {
        string[][] all = [.. rows];
        int columns = schema.Columns.Length - (Array.Exists(all, r => r[^1].Length > 0) ? 0 : 1);
        using var text = new StringWriter();
        using (CsvWriter csv = CsvWriter.Create(text, new CsvWriterOptions { NewLine = "\n" }, leaveOpen: true))
        {
            csv.WriteRecord([.. schema.Columns.Take(columns).Select(c => c.Name)]);
            foreach (string[] row in all)
                csv.WriteRecord(row[..columns]);
        }

        return text.ToString();
    }

    /// <summary>One row, without the end of its line.</summary>
    public static string Row(string[] cells, char separator)
    {
        using var text = new StringWriter();
        var options = new CsvWriterOptions { NewLine = "\n", Separator = separator };
        using (CsvWriter csv = CsvWriter.Create(text, options, leaveOpen: true))
            csv.WriteRecord(Array.ConvertAll(cells, CellText.Guard));
        return text.ToString().TrimEnd('\n');
    }
}
