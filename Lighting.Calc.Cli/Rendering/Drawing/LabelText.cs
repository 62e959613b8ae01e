using System.Text;

namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>How wide letters are, and where a name is broken into lines.</summary>
/// <remarks>Widths are those of Helvetica (Adobe's metrics of the 14 base fonts), which the families that the style
/// sheet names first share; a drawing states the width of every line, so that other letters are fitted to it.</remarks>
internal static class LabelText
{
    /// <summary>Size of the letters.</summary>
    public const double Size = 10;

    /// <summary>From one line to the next.</summary>
    public const double LineHeight = 11.5;

    private const double LongestWord = 110;

    // Figures are set bold, which is wider.
    private const double BoldWidening = 1.06;

    // From the space to the tilde, in thousandths of the size.
    private static readonly int[] s_ascii =
    [
        278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
        556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
        1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
        667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
        333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
        556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
    ];

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
            >= ' ' and <= '~' => s_ascii[rune.Value - ' '] / 1000.0,
            '\u00A0' => 0.278,
            '→' => 1,
            < 0x2000 => 0.78,
            _ => 1.05,
        };
}
