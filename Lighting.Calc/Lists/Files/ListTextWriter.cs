using CsvHelper;

namespace Lighting.Calc;

/// <summary>Writes rows as CSV text: comma, quotes where needed, a line feed after each row.</summary>
internal static class ListTextWriter
{
    public static string Write(ListSchema schema, IEnumerable<string[]> rows)
    {
        using var text = new StringWriter();
        using (CsvWriter csv = CsvWriter.Create(text, new CsvWriterOptions { NewLine = "\n" }, leaveOpen: true))
        {
            csv.WriteRecord([.. schema.Columns.Select(c => c.Name)]);
            foreach (string[] row in rows)
                csv.WriteRecord(row);
        }

        return text.ToString();
    }
}
