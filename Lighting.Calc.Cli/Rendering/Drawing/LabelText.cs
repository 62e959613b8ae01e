using System.Text;

namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>How wide letters are, and where a name is broken into lines.</summary>
/// <remarks>Widths are those of the widest of the sans-serif families that the style sheet names, so that a label never
/// needs more room than it was given.</remarks>
internal static class LabelText
{
    /// <summary>Size of the letters.</summary>
    public const double Size = 10;

    /// <summary>From one line to the next.</summary>
    public const double LineHeight = 11.5;

    private const double LongestWord = 110;

    // Figures are set bold, which is wider.
    private const double BoldWidening = 1.14;

    /// <summary>The width of a line.</summary>
    public static double Width(string line, bool isBold) =>
        line.EnumerateRunes().Sum(Em) * Size * (isBold ? BoldWidening : 1);

    /// <summary>The width of a label, its last line bold where it holds figures.</summary>
    public static double Width(IReadOnlyList<string> lines, bool hasFigures) =>
        lines.Select((l, i) => Width(l, hasFigures && i == lines.Count - 1)).DefaultIfEmpty().Max();

    /// <summary>Breaks a name between words into lines of at most a width, and inside a word only where it is very
    /// long.</summary>
    public static IEnumerable<string> Wrap(string text, double width)
    {
        var line = new StringBuilder();
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && Width($"{line} {word}", isBold: false) <= width)
            {
                line.Append(' ').Append(word);
                continue;
            }

            if (line.Length > 0)
                yield return line.ToString();
            line.Clear();
            foreach (Rune rune in word.EnumerateRunes())
            {
                if (line.Length > 0 && Width($"{line}{rune}", isBold: false) > Math.Max(width, LongestWord))
                {
                    yield return line.ToString();
                    line.Clear();
                }

                line.Append(rune.ToString());
            }
        }

        if (line.Length > 0)
            yield return line.ToString();
    }

    private static double Em(Rune rune) =>
        rune.Value switch
        {
            ' ' or '\u00A0' or '.' or ',' or ':' or ';' or '\'' or '|' or '!' => 0.34,
            'i' or 'j' or 'l' or 'I' => 0.30,
            'f' or 't' or 'r' or '-' or '(' or ')' or '/' or '[' or ']' => 0.42,
            'm' or 'W' or 'M' or '%' or '@' => 0.99,
            'w' or '+' or '=' or '<' or '>' or '×' or '−' => 0.84,
            >= 'A' and <= 'Z' => 0.76,
            >= 'a' and <= 'z' or >= '0' and <= '9' => 0.64,
            < 0x2E80 => 0.80,
            _ => 1.05,
        };
}
