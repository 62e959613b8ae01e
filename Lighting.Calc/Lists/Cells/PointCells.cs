namespace Lighting.Calc;

/// <summary>Reads the points a row joins: free text, but for the two battery terminals.</summary>
internal static class PointCells
{
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
        if (BatteryTerminal.Meant(point) is not { } meant)
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
}
