using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Reads <c>readings.csv</c>: what was measured or seen. A row without a reading was not taken and is left
/// out.</summary>
internal static class ReadingsReader
{
    /// <summary>Reading of an ohmmeter without a connection.</summary>
    public const string Open = "open";

    /// <summary>The same as a digital meter shows it.</summary>
    public const string OverLimit = "OL";

    /// <summary>Reading of a test that was passed over.</summary>
    public const string Skipped = "skipped";

    /// <summary>The instrument words of lists.</summary>
    public static readonly (string Word, Instrument Value)[] Instruments =
    [
        ("meter", Instrument.Meter),
        ("test lamp", Instrument.TestLamp),
        ("ammeter", Instrument.Ammeter),
        ("ohmmeter", Instrument.Ohmmeter),
        ("visual", Instrument.Visual),
        ("good lamp", Instrument.GoodLamp),
        ("bench", Instrument.Bench),
        ("bench reversed", Instrument.BenchReversed),
        ("wiggle", Instrument.Wiggle),
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

    /// <summary>The words for lamps that are watched while a part is moved.</summary>
    public static readonly (string Word, Brightness Value)[] Wiggles =
    [
        ("steady", Brightness.Normal),
        ("flickers", Brightness.Dim),
    ];

    /// <summary>The word of a list for what was seen.</summary>
    public static string WordOf(Instrument instrument, Brightness seen) =>
        (instrument == Instrument.Wiggle ? Wiggles : Looks).First(l => l.Value == seen).Word;

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
            CheckPoint(row, names, hasRuns, tool, point, row.Text("to"));
            var untaken = new Reading
            {
                When = when,
                Point = point,
                Instrument = tool,
                To = Second(row, names, tool, point),
                Jumper = Jumper(row, names, tool),
                Unplugged = Unplugged(row, names, tool, point),
                Notes = row.Text(ListSchema.Notes),
            };
            if (text is not null && Result(row, untaken, text) is { } reading && !row.IsFaulty)
                readings.Add(reading);
        }

        return readings.ToImmutable();
    }

    private static Reading Result(ListRow row, Reading reading, string text) =>
        reading.Instrument switch
        {
            _ when Name.Equal(text, Skipped) => reading with { IsSkipped = true },
            Instrument.Meter => reading with { Voltage = row.Quantity("reading", CellRanges.MeterVolts) },
            Instrument.Ammeter => reading with { Current = row.Quantity("reading", CellRanges.MeterAmps) },
            Instrument.Ohmmeter when Name.Equal(text, Open) || Name.Equal(text, OverLimit) => reading with
            {
                IsOpen = true,
            },
            Instrument.Ohmmeter => reading with { Resistance = row.Quantity("reading", CellRanges.MeterOhms) },
            Instrument.Wiggle => reading with
            {
                Seen = PeopleWords.Wiggle(text) ?? row.Word("reading", "how the lamps are", Wiggles),
            },
            _ => reading with { Seen = PeopleWords.Look(text) ?? row.Word("reading", "how a lamp looks", Looks) },
        };

    private static string? Second(ListRow row, BikeNames names, Instrument tool, string point)
    {
        if (row.Text("to") is not { } text || PointCells.Optional(row, "to") is not { } second)
            return null;
        if (IsGenerator(tool, point) && BenchPoints.IsGenerator(second))
            return second;
        if (tool is Instrument.Meter or Instrument.Ohmmeter)
            names.Check(row, "to", second, "a point of the bike", [NamedThing.Point]);
        else
            row.Fault("to", text, "goes with a meter or an ohmmeter", "expected a blank cell", []);
        return second;
    }

    private static bool IsGenerator(Instrument tool, string point) =>
        tool is Instrument.Meter or Instrument.Ohmmeter && BenchPoints.LeadOf(point) > 0;

    private static JumperLead? Jumper(ListRow row, BikeNames names, Instrument tool)
    {
        if (row.Text("jumper") is not { } text)
            return null;
        if (tool is Instrument.Ohmmeter or Instrument.Bench or Instrument.BenchReversed or Instrument.Wiggle)
            row.Fault("jumper", text, "goes with a live reading", "expected a blank cell", []);
        if (JumperLead.Of(text, names.IsPoint) is { } lead)
            return lead;
        row.Fault(
            "jumper",
            text,
            "does not name two points of the bike",
            $"expected a form such as '{Bike.BatteryPlus} to tail feed'",
            []
        );
        return null;
    }

    private static string? Unplugged(ListRow row, BikeNames names, Instrument tool, string point)
    {
        if (row.Text("unplugged") is not { } text)
            return null;
        if (!Name.Equal(text, Reading.EveryLamp))
            names.Check(
                row,
                "unplugged",
                text,
                $"a run, lamp or fuse of the bike, or '{Reading.EveryLamp}'",
                [NamedThing.Run, NamedThing.Lamp, NamedThing.Fuse]
            );
        if (
            tool is Instrument.Bench or Instrument.BenchReversed or Instrument.Wiggle
            || IsGenerator(tool, point)
            || Name.Equal(point, Reading.EveryLamp)
        )
            row.Fault("unplugged", text, "goes with a reading on the harness", "expected a blank cell", []);
        return text;
    }

    private static void CheckPoint(
        ListRow row,
        BikeNames names,
        bool hasRuns,
        Instrument tool,
        string point,
        string? to
    )
    {
        if (IsGenerator(tool, point) || tool is Instrument.Ammeter && Name.Equal(point, BenchPoints.BatteryLead))
            return;
        if (tool is Instrument.TestLamp && hasRuns)
            names.Check(
                row,
                "point",
                point,
                "a point of the bike, or a fuse that the test lamp replaces",
                [NamedThing.Point, NamedThing.Fuse]
            );
        else if (tool is Instrument.Meter && hasRuns || tool is Instrument.Ohmmeter && to is not null)
            names.Check(row, "point", point, "a point of the bike", [NamedThing.Point]);
        else if (tool is Instrument.Ammeter)
            names.Check(row, "point", point, "a fuse of the bike for an ammeter to replace", [NamedThing.Fuse]);
        else if (tool is Instrument.Visual && !Name.Equal(point, Reading.EveryLamp))
            names.Check(row, "point", point, "a lamp or run of the bike", [NamedThing.Lamp, NamedThing.Run]);
        else if (tool is Instrument.GoodLamp or Instrument.Bench or Instrument.BenchReversed)
            names.Check(row, "point", point, "a lamp of the bike", [NamedThing.Lamp]);
        else if (tool is Instrument.Ohmmeter or Instrument.Wiggle && LampHolder.LampsOf(point) is { } lamps)
            foreach (string lamp in lamps)
                names.Check(row, "point", lamp, "a lamp of the bike", [NamedThing.Lamp]);
        else if (tool is Instrument.Wiggle)
            names.Check(
                row,
                "point",
                point,
                "a run, switch or fuse of the bike, or the holder of a lamp",
                [NamedThing.Run, NamedThing.Switch, NamedThing.Fuse]
            );
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
