using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Reads <c>swaps.csv</c>: which lamps are replaced, and by what.</summary>
internal static class SwapsReader
{
    /// <summary>The replacements of the rows that are valid; the others are logged.</summary>
    /// <param name="table">The list.</param>
    /// <param name="systemVoltage">The bike's nominal voltage.</param>
    /// <param name="names">The bike's names.</param>
    public static ImmutableArray<LampReplacement> Read(
        ListTable table,
        ElectricPotential systemVoltage,
        BikeNames names
    )
    {
        var lamps = new UniqueNames("lamp", "lamp");
        var swaps = ImmutableArray.CreateBuilder<LampReplacement>();
        foreach (ListRow row in table.Rows)
        {
            string lamp = lamps.Take(row);
            if (lamp.Length > 0)
                names.Check(row, "lamp", lamp, "a lamp of the bike", [NamedThing.Lamp]);
            LampSpecification? replacement = LampCells.Read(row, "new code", systemVoltage, assumedType: null);
            if (!row.IsFaulty && replacement is not null)
                swaps.Add(new LampReplacement(lamp, replacement) { Notes = row.Text(ListSchema.Notes) });
        }

        return swaps.ToImmutable();
    }
}
