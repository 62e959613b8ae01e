using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Lighting.Calc;

/// <summary>Puts a message and the text it quotes on one line that is safe to print.</summary>
internal static class OneLine
{
    private const int LongestQuote = 60;

    public static string Of(string? text, string problem, string? expected, ImmutableArray<string> nearest)
    {
        var line = new StringBuilder();
        if (text is not null)
            line.Append(Quoted(text)).Append(' ');
        line.Append(problem);
        if (expected is not null)
            line.Append("; ").Append(expected);
        if (!nearest.IsDefaultOrEmpty)
            line.Append("; ").Append(SpellingSuggestions.Question(nearest.Select(Quoted)));
        return line.ToString();
    }

    /// <summary>The text in quotes, shortened, its control characters spelt out.</summary>
    public static string Quoted(string text)
    {
        var shown = new StringBuilder("'");
        Span<char> characters = stackalloc char[2];
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (shown.Length > LongestQuote)
            {
                shown.Append('…');
                break;
            }

            UnicodeCategory category = Rune.GetUnicodeCategory(rune);
            if (
                category
                is UnicodeCategory.Control
                    or UnicodeCategory.Format
                    or UnicodeCategory.LineSeparator
                    or UnicodeCategory.ParagraphSeparator
            )
                shown.Append(CultureInfo.InvariantCulture, $"\\u{rune.Value:X4}");
            else
                shown.Append(characters[..rune.EncodeToUtf16(characters)]);
        }

        return shown.Append('\'').ToString();
    }
}
