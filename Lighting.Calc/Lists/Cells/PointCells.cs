namespace Lighting.Calc;

/// <summary>Reads the points a row joins: free text, but for the two battery terminals.</summary>
internal static class PointCells
{
    private static readonly string[] s_plus = ["+", "(+)", "plus", "positive", "pos"];
    private static readonly string[] s_minus = ["-", "(-)", "−", "–", "minus", "negative", "neg"];

    /// <summary>A point; null if the cell is blank, or looks like a battery terminal but is not one of the two and the
    /// fault is logged.</summary>
    public static string? Optional(ListRow row, string column)
    {
        if (row.Text(column) is not { } point)
            return null;
        if (Name.Equal(point, Bike.BatteryPlus))
            return Bike.BatteryPlus;
        if (Name.Equal(point, Bike.BatteryMinus))
            return Bike.BatteryMinus;
        if (Meant(point) is not { } meant)
            return point;
        row.Fault(
            column,
            point,
            "is not how a battery terminal is written",
            $"expected '{Bike.BatteryPlus}' or '{Bike.BatteryMinus}'",
            [meant]
        );
        return null;
    }

    /// <summary>A point; empty, with the fault logged, when there is none.</summary>
    public static string Needed(ListRow row, string column)
    {
        if (row.Required(column) is null)
            return "";
        return Optional(row, column) ?? "";
    }

    /// <summary>The points of a row that joins two; logs a fault when they are the same.</summary>
    public static (string From, string To) Pair(ListRow row)
    {
        string from = Needed(row, "from"),
            to = Needed(row, "to");
        if (from.Length > 0 && Name.Equal(from, to))
            row.Fault("to", to, "is the point it comes from as well", "expected two different points");
        return (from, to);
    }

    /// <summary>The terminal that a text means, such as <c>Battery+</c>, <c>batt plus</c> or <c>battry -</c>.</summary>
    private static string? Meant(string text)
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
