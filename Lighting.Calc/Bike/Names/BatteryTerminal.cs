namespace Lighting.Calc;

/// <summary>Recognises a battery terminal that is not written as <see cref="Bike.BatteryPlus"/> or
/// <see cref="Bike.BatteryMinus"/>.</summary>
internal static class BatteryTerminal
{
    private static readonly string[] s_plus = ["+", "(+)", "plus", "positive", "pos"];
    private static readonly string[] s_minus = ["-", "(-)", "−", "–", "minus", "negative", "neg"];

    /// <summary>The terminal that a text means, such as <c>Battery+</c>, <c>batt plus</c> or <c>battry -</c>; null if
    /// it means none.</summary>
    public static string? Meant(string text)
    {
        string lower = text.ToLowerInvariant();
        return Means(lower, s_plus) ? Bike.BatteryPlus
            : Means(lower, s_minus) ? Bike.BatteryMinus
            : null;
    }

    private static bool Means(string lower, string[] signs)
    {
        foreach (string sign in signs)
        {
            if (
                lower.EndsWith(sign, StringComparison.Ordinal) && IsBattery(lower[..^sign.Length].Trim())
                || lower.StartsWith(sign, StringComparison.Ordinal) && IsBattery(lower[sign.Length..].Trim())
            )
                return true;
        }

        return false;
    }

    private static bool IsBattery(string word) =>
        word is "bat" or "batt" || SpellingSuggestions.Distance(word, "battery", most: 2) <= 2;
}
