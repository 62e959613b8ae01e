using CsvHelper;

namespace Lighting.Calc.Tests.Lists;

/// <summary>Rewrites CSV text with another separator, line end and quoting.</summary>
internal static class CsvForm
{
    public static string Rewrite(string text, char separator, string lineEnd, bool quoteAll)
    {
        using CsvReader csv = CsvReader.FromText(text, new CsvReaderOptions { HasHeader = false, Separator = ',' });
        using var output = new StringWriter();
        var options = new CsvWriterOptions
        {
            Separator = separator,
            NewLine = lineEnd,
            Quoting = quoteAll ? CsvQuoting.Always : CsvQuoting.WhenNeeded,
        };
        using (CsvWriter writer = CsvWriter.Create(output, options, leaveOpen: true))
        {
            while (csv.Read())
                writer.WriteRecord([.. Enumerable.Range(0, csv.FieldCount).Select(csv.GetString)]);
        }

        return output.ToString();
    }
}
