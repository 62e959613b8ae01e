using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Reads one list's file into rows under known columns, or logs why it cannot.</summary>
internal static class ListReader
{
    /// <summary>The list; null, with the faults logged, when its file or header is wrong. A row that is wrong as a
    /// whole is logged and left out.</summary>
    public static ListTable? Read(ListFile source, ListSchema schema, FaultLog log)
    {
        string file = source.Label;
        if (source.Read(log) is not { } bytes || ListText.Check(bytes, file, log) is not { } utf8)
            return null;
        (int Number, string Text)? header = ListLexer.FirstLine(utf8);
        string? declared = header is { } start ? ListSeparator.Declared(start.Text) : null;
        if (declared is not null)
        {
            utf8 = ListLexer.WithoutLine(utf8, header!.Value.Number);
            header = ListLexer.FirstLine(utf8);
        }

        if (header is not { } first)
        {
            log.Fault(
                new ListFault
                {
                    File = file,
                    Line = 1,
                    Problem = "the list is empty",
                    Expected = $"the first line names the columns: {schema.KnownColumns}",
                }
            );
            return null;
        }

        if (ListSeparator.Of(first.Text, declared, file, first.Number, log) is not { } separator)
            return null;
        int before = log.FaultCount;
        List<ListLine> lines = ListLexer.Split(utf8, separator, file, log);
        bool headerIsWhole = lines.Count > 0 && lines[0].Number == first.Number;
        if (!headerIsWhole)
        {
            if (log.FaultCount == before)
                log.Fault(
                    new ListFault
                    {
                        File = file,
                        Line = first.Number,
                        Problem = "the header line cannot be read",
                        Expected = $"the first line names the columns: {schema.KnownColumns}",
                    }
                );
            return null;
        }

        if (ListHeader.Match(schema, lines[0], file, log) is not { } places)
            return null;
        var rows = ImmutableArray.CreateBuilder<ListRow>(lines.Count - 1);
        for (int i = 1; i < lines.Count; i++)
            if (IsWhole(lines[i], lines[0], separator, file, log))
                rows.Add(
                    new ListRow(
                        schema,
                        file,
                        lines[i].Number,
                        Array.ConvertAll(lines[i].Cells, CellText.Clean),
                        places,
                        separator,
                        log
                    )
                );
        return new ListTable(schema, file, rows.DrainToImmutable(), log.FaultCount == before);
    }

    // Digits on both sides of a comma, as "0,9 m" comes apart.
    private static string? DecimalComma(string[] cells)
    {
        for (int i = 0; i + 1 < cells.Length; i++)
            if (
                cells[i].Length is > 0 and < 4
                && cells[i].All(char.IsAsciiDigit)
                && cells[i + 1].Length > 0
                && char.IsAsciiDigit(cells[i + 1][0])
                && !cells[i + 1].Contains('.', StringComparison.Ordinal)
            )
                return $"{cells[i]},{cells[i + 1]}";
        return null;
    }

    private static bool IsWhole(ListLine line, ListLine header, char separator, string file, FaultLog log)
    {
        if (line.Cells.Length != header.Cells.Length)
        {
            string many =
                line.Cells.Length <= header.Cells.Length ? ""
                : $"; quote a cell that holds {ListSeparator.Name(separator)}"
                    + (
                        separator == ',' && DecimalComma(line.Cells) is { } number
                            ? $"; if '{number}' is one number, write {number.Replace(',', '.')}"
                            : ""
                    );
            log.Fault(
                new ListFault
                {
                    File = file,
                    Line = line.Number,
                    Problem = $"the row has {line.Cells.Length} cells, the header {header.Cells.Length}{many}",
                }
            );
            return false;
        }

        for (int i = 0; i < line.Cells.Length; i++)
        {
            string? problem = CellText.ProblemOf(line.Cells[i]);
            if (string.IsNullOrWhiteSpace(header.Cells[i]) && !string.IsNullOrWhiteSpace(line.Cells[i]))
                problem ??= "stands under a column that has no name";
            if (problem is null)
                continue;
            log.Fault(
                new ListFault
                {
                    File = file,
                    Line = line.Number,
                    ColumnName = CellText.Clean(header.Cells[i]),
                    ColumnNumber = i + 1,
                    Text = line.Cells[i],
                    Problem = problem,
                }
            );
            return false;
        }

        return true;
    }
}
