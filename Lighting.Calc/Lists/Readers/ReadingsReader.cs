using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Reads <c>readings.csv</c>: what was measured or seen. A row without a reading was not taken and is left
/// out.</summary>
internal static class ReadingsReader
{
    /// <summary>Reading of an ohmmeter without a connection.</summary>
    public const string Open = "open";

    /// <summary>The instrument words of lists.</summary>
    public static readonly (string Word, Instrument Value)[] Instruments =
    [
        ("meter", Instrument.Meter),
        ("test lamp", Instrument.TestLamp),
        ("ammeter", Instrument.Ammeter),
        ("ohmmeter", Instrument.Ohmmeter),
        ("visual", Instrument.Visual),
    ];

    /// <summary>The words for how a lamp looks; a test lamp is lit, dim or off.</summary>
    public static readonly (string Word, Brightness Value)[] Looks =
    [
        ("dark", Brightness.Dark),
        ("dim", Brightness.Dim),
        ("good", Brightness.Normal),
        ("lit", Brightness.Normal),
        ("bright", Brightness.Bright),
        ("off", Brightness.Dark),
    ];

    /// <summary>The readings of the rows that are valid and were taken; the others are logged.</summary>
    public static ImmutableArray<Reading> Read(ListTable table, BikeNames names, bool hasRuns)
    {
        var readings = ImmutableArray.CreateBuilder<Reading>();
        foreach (ListRow row in table.Rows)
        {
            Condition when = row.Held("when");
            string? text = row.Text("reading");
            Instrument? instrument = row.Required("instrument") is null
                ? null
                : row.Word("instrument", "an instrument", Instruments);
            string? point = row.Required("point") is null ? null : PointCells.Optional(row, "point");
            if (instrument is not { } tool || point is null)
                continue;
            CheckPoint(row, names, hasRuns, tool, point);
            if (
                text is not null
                && Result(
                    row,
                    new Reading
                    {
                        When = when,
                        Point = point,
                        Instrument = tool,
                        Notes = row.Text(ListSchema.Notes),
                    },
                    text
                )
                    is { } reading
                && !row.IsFaulty
            )
                readings.Add(reading);
        }

        return readings.ToImmutable();
    }

    private static Reading Result(ListRow row, Reading reading, string text) =>
        reading.Instrument switch
        {
            Instrument.Meter => reading with { Voltage = row.Quantity("reading", CellRanges.MeterVolts) },
            Instrument.Ammeter => reading with { Current = row.Quantity("reading", CellRanges.MeterAmps) },
            Instrument.Ohmmeter when Name.Equal(text, Open) => reading with { IsOpen = true },
            Instrument.Ohmmeter => reading with { Resistance = row.Quantity("reading", CellRanges.MeterOhms) },
            _ => reading with { Seen = row.Word("reading", "how a lamp looks", Looks) },
        };

    private static void CheckPoint(ListRow row, BikeNames names, bool hasRuns, Instrument tool, string point)
    {
        if (tool is Instrument.Meter or Instrument.TestLamp && hasRuns)
            names.Check(row, "point", point, "a point of the bike", [NamedThing.Point]);
        else if (tool is Instrument.Ammeter)
            names.Check(row, "point", point, "a fuse of the bike for an ammeter to replace", [NamedThing.Fuse]);
        else if (tool is Instrument.Visual)
            names.Check(row, "point", point, "a lamp or run of the bike", [NamedThing.Lamp, NamedThing.Run]);
        else if (tool is Instrument.Ohmmeter)
            names.Check(
                row,
                "point",
                point,
                "a lamp, run, switch or fuse of the bike",
                [NamedThing.Lamp, NamedThing.Run, NamedThing.Switch, NamedThing.Fuse]
            );
    }
}
