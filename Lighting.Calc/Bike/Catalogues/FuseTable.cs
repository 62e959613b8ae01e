using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The standard fuse ratings of each style, with their typical cold resistance where one is
/// published.</summary>
internal static class FuseTable
{
    /// <summary>Every standard fuse, smallest first within a style.</summary>
    public static ImmutableArray<PublishedFuse> All { get; } =
    [
        .. PublishedTable
            .Load("fuse-ratings")
            .Read()
            .Select(row => new PublishedFuse(
                Enum.Parse<FuseStyle>(row.Text("style"), ignoreCase: true),
                ElectricCurrent.FromAmperes(row.Number("rating_a")),
                row.Text("colour"),
                row.NumberOrNull("cold_resistance_mohm") is { } milliohms
                    ? ElectricResistance.FromMilliohms(milliohms)
                    : null
            ))
            .OrderBy(f => f.Style)
            .ThenBy(f => f.Rating.Amperes),
    ];

    /// <summary>The standard fuses of a style, smallest first.</summary>
    public static ImmutableArray<PublishedFuse> Of(FuseStyle style) => [.. All.Where(f => f.Style == style)];

    /// <summary>Resistance of a fuse: as listed, else the typical published for its style and rating, else
    /// zero.</summary>
    /// <remarks>Zero means unknown: no typical resistance is published for glass fuses.</remarks>
    /// <returns>The resistance, holder not included.</returns>
    public static ElectricResistance ResistanceOf(Fuse fuse) =>
        fuse.Resistance
        ?? All.FirstOrDefault(f =>
            f.Style == fuse.Style && Math.Abs(f.Rating.Amperes - fuse.Rating.Amperes) < 1e-9
        )?.ColdResistance
        ?? ElectricResistance.Zero;
}
