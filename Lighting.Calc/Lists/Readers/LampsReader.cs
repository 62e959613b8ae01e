using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Reads <c>lamps.csv</c>: the lamps and other loads.</summary>
internal static class LampsReader
{
    /// <summary>The lamps of the rows that are valid; the others are logged.</summary>
    /// <param name="table">The list.</param>
    /// <param name="systemVoltage">The bike's nominal voltage.</param>
    /// <param name="hasRuns">Whether the bike has runs, so that every lamp needs its two points.</param>
    /// <param name="log">Receives the caution that no lamp suits the bike.</param>
    public static ImmutableArray<FittedLamp> Read(
        ListTable table,
        ElectricPotential systemVoltage,
        bool hasRuns,
        FaultLog log
    )
    {
        var names = new UniqueNames("lamp", "lamp");
        var lamps = new List<(ListRow Row, FittedLamp Lamp)>();
        foreach (ListRow row in table.Rows)
        {
            string circuit = row.Required("circuit") ?? "";
            string name = names.Take(row);
            LampSpecification? specification = LampCells.Read(
                row,
                "code",
                systemVoltage,
                PeopleWords.NamesHorn(name) ? LampType.Resistor : LampType.Filament
            );
            int? quantity = row.Whole("quantity", 1, 1000);
            Ratio? duty = row.Quantity("duty", QuantityText.Fraction);
            Ratio? drop = row.Quantity("allowed drop", CellRanges.Drop);
            Condition litWhen = row.Condition("lit when");
            string? feed = Point(row, "feed", hasRuns),
                back = Point(row, "return", hasRuns);
            if (feed is not null && back is not null && Name.Equal(feed, back))
                row.Fault("return", back, "is the feed as well", "expected two different points");
            bool? momentary = row.Word("momentary", "yes or no", ("yes", true), ("no", false));
            if (row.IsFaulty || specification is null)
                continue;
            var lamp = new FittedLamp
            {
                Circuit = circuit,
                Lamp = name,
                Specification = specification,
                Quantity = quantity ?? 1,
                LitWhen = litWhen,
                AllowedDrop = drop,
                Feed = feed,
                Return = back,
                Momentary = momentary,
                Notes = row.Text(ListSchema.Notes),
            };
            lamps.Add((row, duty is { } share ? lamp with { Duty = share } : lamp));
        }

        LampVoltsChecks.Caution(lamps, systemVoltage, log);
        return [.. lamps.Select(l => l.Lamp)];
    }

    private static string? Point(ListRow row, string column, bool needed)
    {
        if (needed && row.Text(column) is null)
            row.Fault(column, null, "the cell is blank", "a bike with runs.csv needs the points of every lamp");
        return PointCells.Optional(row, column);
    }
}
