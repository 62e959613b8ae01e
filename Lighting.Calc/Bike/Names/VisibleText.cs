using System.Globalization;
using System.Text;

namespace Lighting.Calc;

/// <summary>Tells characters that cannot be seen, and spells them out: the one rule for names in lists and for
/// everything that is printed.</summary>
/// <remarks>
/// Hidden are control and format characters (escapes, bidirectional overrides, zero-width characters, byte order marks:
/// Unicode general categories Cc, Cf, Zl and Zp), unpaired surrogates, and the blank letters and signs that Unicode
/// gives no such category.
/// </remarks>
internal static class VisibleText
{
    /// <summary>What is wrong with a name that holds one.</summary>
    internal const string Problem = "holds a character that cannot be seen";

    /// <summary>The text with each hidden character spelt out, such as <c>\u202E</c>; line feeds and tabs stay where
    /// they are allowed.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="keepLines">Whether line feeds, carriage returns and tabs are left as they are.</param>
    public static string Of(string text, bool keepLines = false)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (!Any(text, keepLines))
            return text;
        var shown = new StringBuilder(text.Length + 16);
        for (int i = 0; i < text.Length;)
        {
            bool isWhole = Rune.TryGetRuneAt(text, i, out Rune rune);
            int length = isWhole ? rune.Utf16SequenceLength : 1;
            if (isWhole && !IsHidden(rune, keepLines))
                shown.Append(text, i, length);
            else
                foreach (char c in text.AsSpan(i, length))
                    shown.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:X4}");
            i += length;
        }

        return shown.ToString();
    }

    /// <summary>Whether a text holds a character that cannot be seen and is no white space.</summary>
    internal static bool HasHidden(string text)
    {
        foreach (char c in text)
            if (c > '~' || c < ' ')
                return HasHiddenRune(text);
        return false;
    }

    private static bool HasHiddenRune(string text)
    {
        for (int i = 0; i < text.Length;)
        {
            if (
                !Rune.TryGetRuneAt(text, i, out Rune rune)
                || (IsHidden(rune, keepLines: false) && !Rune.IsWhiteSpace(rune))
            )
                return true;
            i += rune.Utf16SequenceLength;
        }

        return false;
    }

    private static bool Any(string text, bool keepLines)
    {
        for (int i = 0; i < text.Length;)
        {
            if (!Rune.TryGetRuneAt(text, i, out Rune rune) || IsHidden(rune, keepLines))
                return true;
            i += rune.Utf16SequenceLength;
        }

        return false;
    }

    private static bool IsHidden(Rune rune, bool keepLines) =>
        rune.Value switch
        {
            '\n' or '\r' or '\t' => !keepLines,
            < 0x7F => rune.Value < ' ',
            // Fillers and joiners that show nothing, outside the categories below.
            0x034F
            or 0x115F
            or 0x1160
            or 0x17B4
            or 0x17B5
            or 0x2800
            or 0x3164
            or 0xFFA0
            or (>= 0xE0100 and <= 0xE01EF) => true,
            _ => Rune.GetUnicodeCategory(rune)
                is UnicodeCategory.Control
                    or UnicodeCategory.Format
                    or UnicodeCategory.LineSeparator
                    or UnicodeCategory.ParagraphSeparator,
        };
}
