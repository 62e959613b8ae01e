using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Reads <c>charging.csv</c>: the output of the charging system over engine speed.</summary>
internal static class ChargingReader
{
    /// <summary>The points of the rows that are valid, in the list's order; the others are logged.</summary>
    public static ImmutableArray<ChargingPoint> Read(ListTable table)
    {
        var seen = new Dictionary<(double Rpm, Condition When), string>();
        var points = ImmutableArray.CreateBuilder<ChargingPoint>();
        foreach (ListRow row in table.Rows)
        {
            RotationalSpeed? speed = row.Required("rpm") is null ? null : row.Quantity("rpm", CellRanges.Rpm);
            ElectricCurrent? current = row.Required("current") is null
                ? null
                : row.Quantity("current", CellRanges.OutputAmps);
            Condition when = row.Condition("when");
            ElectricPotential? voltage = row.Quantity("voltage", CellRanges.SourceVolts),
                open = row.Quantity("open voltage", CellRanges.OpenVolts);
            if (row.IsFaulty || speed is not { } rpm || current is not { } amps)
                continue;
            if (seen.TryAdd((rpm.RevolutionsPerMinute, when), row.Where))
                points.Add(
                    new ChargingPoint(rpm, amps, when)
                    {
                        Voltage = voltage,
                        OpenVoltage = open,
                        Notes = row.Text(ListSchema.Notes),
                    }
                );
            else
                row.Fault(
                    "rpm",
                    row.Text("rpm"),
                    $"is given on {seen[(rpm.RevolutionsPerMinute, when)]} already",
                    "keep one of the two, or give them different conditions in 'when'"
                );
        }

        return points.ToImmutable();
    }
}
