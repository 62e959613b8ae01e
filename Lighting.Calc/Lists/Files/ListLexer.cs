using System.Text;
using CsvHelper;

namespace Lighting.Calc;

/// <summary>Splits a list into lines of cells by RFC 4180, counting the file's own lines.</summary>
internal static class ListLexer
{
    /// <summary>Every line that is not blank, its number being that of the file's line where it starts.</summary>
    public static List<ListLine> Split(byte[] utf8, char separator, string file, FaultLog log)
    {
        var lines = new List<ListLine>();
        var options = new CsvReaderOptions
        {
            HasHeader = false,
            Separator = separator,
            TrackLineNumbers = true,
            MalformedData = CsvMalformedDataHandling.Skip,
            OnMalformedRecord = record =>
                log.Fault(
                    new ListFault
                    {
                        File = file,
                        Line = (int)record.LineNumber,
                        Problem = Describe(record.Reason),
                        Expected = "put the whole cell in double quotes and double each quote inside it",
                    }
                ),
        };
        using CsvReader csv = CsvReader.Create(utf8, options);
        while (csv.Read())
        {
            var cells = new string[csv.FieldCount];
            for (int i = 0; i < cells.Length; i++)
                cells[i] = csv.GetString(i);
            if (Array.TrueForAll(cells, string.IsNullOrWhiteSpace))
                continue;
            if (lines.Count > ListLimits.Rows)
            {
                log.Fault(
                    new ListFault
                    {
                        File = file,
                        Line = (int)csv.LineNumber,
                        Problem = $"the list has more than {ListLimits.Rows} rows",
                    }
                );
                break;
            }

            lines.Add(new ListLine((int)csv.LineNumber, cells));
        }

        return lines;
    }

    /// <summary>The first line that is not blank, whole, with its number; null if there is none.</summary>
    public static (int Number, string Text)? FirstLine(byte[] utf8)
    {
        ReadOnlySpan<byte> rest = utf8;
        for (int number = 1; !rest.IsEmpty; number++)
        {
            int end = rest.IndexOfAny((byte)'\r', (byte)'\n');
            string line = Encoding.UTF8.GetString(end < 0 ? rest : rest[..end]);
            if (line.Any(c => !char.IsWhiteSpace(c) && c is not (',' or ';')))
                return (number, line);
            rest = end < 0 ? [] : rest[(rest[end..].StartsWith("\r\n"u8) ? end + 2 : end + 1)..];
        }

        return null;
    }

    /// <summary>The same text with one line left blank, so that the others keep their numbers.</summary>
    public static byte[] WithoutLine(byte[] utf8, int number)
    {
        byte[] blanked = [.. utf8];
        Span<byte> rest = blanked;
        for (int line = 1; line < number; line++)
        {
            int before = rest.IndexOfAny((byte)'\r', (byte)'\n');
            rest = rest[(rest[before..].StartsWith("\r\n"u8) ? before + 2 : before + 1)..];
        }

        int end = rest.IndexOfAny((byte)'\r', (byte)'\n');
        (end < 0 ? rest : rest[..end]).Fill((byte)' ');
        return blanked;
    }

    private static string Describe(CsvMalformedReason reason) =>
        reason switch
        {
            CsvMalformedReason.StrayQuote => "a double quote stands inside a cell that is not quoted",
            CsvMalformedReason.TextAfterClosingQuote => "text follows the closing quote of a cell",
            CsvMalformedReason.UnterminatedQuote => "a quoted cell that starts in this row is never closed",
            _ => $"the row is malformed ({reason})",
        };
}
