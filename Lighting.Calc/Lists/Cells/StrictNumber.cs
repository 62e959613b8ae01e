using System.Globalization;

namespace Lighting.Calc;

/// <summary>Splits a text into a number and the word after it: decimal point only, no thousands, no NaN, no
/// hexadecimal.</summary>
internal static class StrictNumber
{
    /// <summary>Reads <c>1.8 m</c>, <c>55W</c>, <c>-.5</c>, <c>1.5e-3</c>.</summary>
    /// <param name="text">The text, trimmed.</param>
    /// <param name="value">The number; infinite when it is beyond the largest double.</param>
    /// <param name="word">What follows the number, trimmed.</param>
    /// <returns>Whether the text starts with a number that ends where the word begins.</returns>
    public static bool TrySplit(string text, out double value, out ReadOnlySpan<char> word)
    {
        int end = Scan(text);
        value = 0;
        word = end < 0 ? [] : text.AsSpan(end).Trim();
        return end > 0
            && (word.Length == 0 || !(char.IsDigit(word[0]) || word[0] is '.' or ',' or '+' or '-' or '_'))
            && double.TryParse(text.AsSpan(0, end), NumberStyles.Float, CultureInfo.InvariantCulture, out value);
    }

    /// <summary>The same text with a decimal point where it has a decimal comma; null if a comma is not the
    /// problem.</summary>
    public static string? WithDecimalPoint(string text)
    {
        int comma = text.IndexOf(',', StringComparison.Ordinal);
        if (
            comma < 1
            || comma != text.LastIndexOf(',')
            || comma + 1 >= text.Length
            || !char.IsAsciiDigit(text[comma - 1])
            || !char.IsAsciiDigit(text[comma + 1])
        )
            return null;
        string whole = text[..comma].Replace(".", "", StringComparison.Ordinal);
        string corrected = $"{whole}.{text[(comma + 1)..]}";
        return TrySplit(corrected, out _, out _) ? corrected : null;
    }

    private static int Scan(string text)
    {
        int at = text.Length > 0 && text[0] is '+' or '-' ? 1 : 0;
        int whole = Digits(text, ref at);
        if (at + 1 < text.Length && text[at] == '.' && char.IsAsciiDigit(text[at + 1]))
        {
            at++;
            Digits(text, ref at);
        }
        else if (whole == 0)
        {
            return -1;
        }

        int exponent = at + 1;
        if (at < text.Length && text[at] is 'e' or 'E')
        {
            if (exponent < text.Length && text[exponent] is '+' or '-')
                exponent++;
            if (Digits(text, ref exponent) > 0)
                at = exponent;
        }

        return at;
    }

    private static int Digits(string text, ref int at)
    {
        int start = at;
        while (at < text.Length && char.IsAsciiDigit(text[at]))
            at++;
        return at - start;
    }
}
