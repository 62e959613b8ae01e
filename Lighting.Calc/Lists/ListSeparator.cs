namespace Lighting.Calc.Lists;

/// <summary>Tells a list's separator from its header line: the only one of comma, semicolon and tab that stands there.</summary>
internal static class ListSeparator
{
    private static readonly char[] s_known = [',', ';', '\t'];

    /// <summary>The separator; null, with the fault logged, when the header line holds two kinds.</summary>
    public static char? Of(string headerLine, string file, int line, FaultLog log)
    {
        char[] present = [.. s_known.Where(c => OutsideQuotes(headerLine).Contains(c))];
        if (present.Length <= 1)
            return present.Length == 1 ? present[0] : ',';
        log.Fault(new ListFault
        {
            File = file,
            Line = line,
            Problem = $"the header line holds {Choice.Of(present.Select(Name)).Replace(" or ", " and ", StringComparison.Ordinal)}",
            Expected = "use one separator throughout: comma, semicolon or tab",
        });
        return null;
    }

    /// <summary>The separator as a message names it.</summary>
    public static string Name(char separator) => separator switch { ',' => "commas", ';' => "semicolons", _ => "tabs" };

    private static IEnumerable<char> OutsideQuotes(string line)
    {
        bool quoted = false;
        foreach (char c in line)
        {
            if (c == '"')
                quoted = !quoted;
            else if (!quoted)
                yield return c;
        }
    }
}
