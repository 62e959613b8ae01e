namespace Lighting.Calc;

/// <summary>Separator of a list by its header line: the only one of comma, semicolon and tab in it, or the one that a
/// line <c>sep=;</c> of a spreadsheet above it declares.</summary>
internal static class ListSeparator
{
    private static readonly char[] s_known = [',', ';', '\t'];

    private const string Declaration = "sep=";

    /// <summary>What a line <c>sep=;</c> declares, which may be no separator; null if the line is no such
    /// declaration.</summary>
    public static string? Declared(string line)
    {
        string bare = line.TrimStart(' ', '"');
        return bare.StartsWith(Declaration, StringComparison.OrdinalIgnoreCase)
            ? string.Concat(bare.Skip(Declaration.Length).Take(1))
            : null;
    }

    /// <summary>The separator; null, with the fault logged, when the header line holds two kinds, or not the one that
    /// is declared.</summary>
    public static char? Of(string headerLine, string? declared, string file, int line, FaultLog log)
    {
        List<char> present = Outside(headerLine);
        if (declared is not null)
        {
            // A list of one column has none.
            if (
                declared.Length == 1
                && (present.Contains(declared[0]) || present.Count == 0 && declared[0] is (',' or ';' or '\t'))
            )
                return declared[0];
            log.Fault(
                new ListFault
                {
                    File = file,
                    Line = line,
                    Problem = $"the header line is not separated as the line above it says, {Declaration}{declared}",
                    Expected = "use comma, semicolon or tab throughout, or remove that line",
                }
            );
            return null;
        }

        if (present.Count <= 1)
            return present.Count == 1 ? present[0] : ',';
        log.Fault(
            new ListFault
            {
                File = file,
                Line = line,
                Problem =
                    "the header line holds "
                    + Choice
                        .Of(s_known.Where(present.Contains).Select(Name))
                        .Replace(" or ", " and ", StringComparison.Ordinal),
                Expected = "use one separator throughout: comma, semicolon or tab",
            }
        );
        return null;
    }

    /// <summary>The separator as a message names it.</summary>
    public static string Name(char separator) =>
        separator switch
        {
            ',' => "commas",
            ';' => "semicolons",
            _ => "tabs",
        };

    /// <summary>The separators that stand outside quotes.</summary>
    private static List<char> Outside(string line)
    {
        var present = new List<char>(s_known.Length);
        bool quoted = false;
        foreach (char c in line)
        {
            if (c == '"')
                quoted = !quoted;
            else if (!quoted && s_known.Contains(c) && !present.Contains(c))
                present.Add(c);
        }

        return present;
    }
}
