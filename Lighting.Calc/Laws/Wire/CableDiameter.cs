using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Outside diameter of a cable by its kind and nominal area: tables/cable-diameters.csv.</summary>
internal static class CableDiameter
{
    private const double SameArea = 1e-6;

    private static readonly ImmutableArray<TableRow> s_rows = [.. PublishedTable.Load("cable-diameters").Read()];

    /// <summary>The largest diameter printed; null if none is printed for the kind and area.</summary>
    /// <param name="wire">The wire.</param>
    /// <param name="cable">Its kind.</param>
    public static Length? Largest(WireSize wire, CableKind cable)
    {
        string? kind = cable switch
        {
            CableKind.Ordinary => "ordinary",
            CableKind.ThinWall => "thin wall",
            _ => null,
        };
        foreach (TableRow row in s_rows)
            if (
                row.Text("kind") == kind
                && Math.Abs(row.Number("area_mm2") - wire.CopperArea.SquareMillimeters) < SameArea
            )
                return Length.FromMillimeters(row.Number("largest_diameter_mm"));
        return null;
    }
}
