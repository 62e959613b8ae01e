namespace Lighting.Calc;

/// <summary>Matches a list's first line to the columns the list may have.</summary>
internal static class ListHeader
{
    /// <summary>For each known column its place in the file, −1 where the file lacks it; null, with the faults logged,
    /// when the header is wrong.</summary>
    public static int[]? Match(ListSchema schema, ListLine header, string file, FaultLog log)
    {
        int[] places = new int[schema.Columns.Length];
        Array.Fill(places, -1);
        string[] names = [.. header.Cells.Select(CellText.Clean)];
        bool good = true;
        if (names.Length > ListLimits.HeaderCells)
            return Refuse(
                new ListFault
                {
                    File = file,
                    Line = header.Number,
                    Problem = $"the header has {names.Length} cells",
                    Expected = $"the columns are {schema.KnownColumns}",
                }
            );
        if (
            !Array.Exists(names, n => schema.IndexOf(n) >= 0)
            && !Array.Exists(names, n => SpellingSuggestions.Of(n, schema.Columns.Select(c => c.Name)).Length > 0)
        )
            return Refuse(
                new ListFault
                {
                    File = file,
                    Line = header.Number,
                    Problem = "the header line is missing",
                    Expected = $"the first line names the columns: {schema.KnownColumns}",
                }
            );
        // What a misspelt heading is meant as is not missing besides.
        var meant = new HashSet<string>(Name.Comparer);
        for (int i = 0; i < names.Length; i++)
        {
            int known = schema.IndexOf(names[i]);
            if (names[i].Length == 0)
                continue;
            if (known < 0)
            {
                System.Collections.Immutable.ImmutableArray<string> nearest = SpellingSuggestions.Of(
                    names[i],
                    Absent(schema, names)
                );
                meant.UnionWith(nearest);
                Fault(i, "is not a column of this list", $"the columns are {schema.KnownColumns}", nearest);
            }
            else if (places[known] >= 0)
                Fault(i, $"names column {i + 1} and column {places[known] + 1}", "keep one of the two", []);
            else
                places[known] = i;
        }

        string[] missing =
        [
            .. schema
                .Columns.Where(c =>
                    c.Required && !names.Contains(c.Name, StringComparer.OrdinalIgnoreCase) && !meant.Contains(c.Name)
                )
                .Select(c => $"'{c.Name}'"),
        ];
        if (missing.Length > 0)
            return Refuse(
                new ListFault
                {
                    File = file,
                    Line = header.Number,
                    Problem =
                        $"the header lacks the column{(missing.Length > 1 ? "s" : "")} {string.Join(", ", missing)}",
                }
            );
        return good ? places : null;

        void Fault(
            int place,
            string problem,
            string expected,
            System.Collections.Immutable.ImmutableArray<string> nearest
        )
        {
            good = false;
            log.Fault(
                new ListFault
                {
                    File = file,
                    Line = header.Number,
                    Text = names[place],
                    Problem = problem,
                    Expected = expected,
                    Nearest = nearest,
                }
            );
        }

        int[]? Refuse(ListFault fault)
        {
            log.Fault(fault);
            return null;
        }
    }

    private static IEnumerable<string> Absent(ListSchema schema, string[] names) =>
        schema.Columns.Select(c => c.Name).Where(c => !names.Contains(c, StringComparer.OrdinalIgnoreCase));
}
