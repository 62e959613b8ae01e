using System.Collections.Immutable;
using Lighting.Calc.Tables;
using UnitsNet;

namespace Lighting.Calc.Harness;

/// <summary>The standard fuses of each style: tables/fuse-ratings.csv.</summary>
public static class FuseTable
{
    private static readonly ImmutableArray<TableRow> Rows = [.. PublishedTable.Load("fuse-ratings").Read()];

    /// <summary>The standard ratings of a style, smallest first.</summary>
    public static ImmutableArray<ElectricCurrent> Ratings(FuseStyle style) =>
        [.. RowsOf(style).Select(r => r.Number("rating_a")).Order().Select(a => ElectricCurrent.FromAmperes(a))];

    /// <summary>Typical cold resistance of a standard fuse; null where none is published (all glass fuses, some blades).</summary>
    /// <param name="style">Its style.</param>
    /// <param name="rating">Its rating.</param>
    public static ElectricResistance? TypicalResistance(FuseStyle style, ElectricCurrent rating)
    {
        foreach (TableRow row in RowsOf(style))
            if (Math.Abs(row.Number("rating_a") - rating.Amperes) < 1e-9 && row.NumberOrNull("cold_resistance_mohm") is { } milliohms)
                return ElectricResistance.FromMilliohms(milliohms);
        return null;
    }

    /// <summary>Resistance of a fuse: as listed, else the typical published for its style and rating, else zero.</summary>
    /// <remarks>Zero stands for "not known": no typical resistance is published for glass fuses.</remarks>
    public static ElectricResistance ResistanceOf(Fuse fuse) =>
        fuse.Resistance ?? TypicalResistance(fuse.Style, fuse.Rating) ?? ElectricResistance.Zero;

    internal static string StyleName(FuseStyle style) => style == FuseStyle.Blade ? "blade" : "glass";

    private static IEnumerable<TableRow> RowsOf(FuseStyle style) => Rows.Where(r => r.Text("style") == StyleName(style));
}
