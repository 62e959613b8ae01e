namespace Lighting.Calc;

/// <summary>Separator of a list by its header line: the only one of comma, semicolon and tab in it.</summary>
internal static class ListSeparator
{
    private static readonly char[] s_known = [',', ';', '\t'];

    /// <summary>The separator; null, with the fault logged, when the header line holds two kinds.</summary>
    public static char? Of(string headerLine, string file, int line, FaultLog log)
    {
        List<char> present = Outside(headerLine);
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
