using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Reads <c>ride.csv</c>: the segments of a ride, in order.</summary>
internal static class RideReader
{
    /// <summary>The segments of the rows that are valid; the others are logged.</summary>
    public static ImmutableArray<RideStretch> Read(ListTable table)
    {
        var stretches = ImmutableArray.CreateBuilder<RideStretch>();
        foreach (ListRow row in table.Rows)
        {
            string name = row.Required("stretch") ?? "";
            RotationalSpeed? speed = row.Required("rpm") is null ? null : row.Quantity("rpm", CellRanges.Rpm);
            Duration? duration = row.Required("minutes") is null ? null : row.Quantity("minutes", CellRanges.Minutes);
            Condition when = row.Held("when");
            if (!row.IsFaulty && speed is { } rpm && duration is { } time)
                stretches.Add(new RideStretch(name, rpm, time, when) { Notes = row.Text(ListSchema.Notes) });
        }

        return stretches.ToImmutable();
    }
}
