using Lighting.Calc.FaultFinding;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>readings</c> prints: a sheet with blanks for what was read; CSV is a <c>readings.csv</c> to fill in.</summary>
internal static class ReadingsDocument
{
    public static Document Of(ExpectedReadings expected)
    {
        var blocks = new List<Block>();
        foreach (Finding note in expected.Notes)
            blocks.Add(new Paragraph(note.Message));
        foreach (ExpectedSetting setting in expected.Settings)
        {
            blocks.Add(new Heading($"Switches: {setting.Setting}"));
            blocks.Add(Points(expected.Bike, setting));
            if (!setting.Fuses.IsEmpty)
                blocks.Add(new Paragraph(string.Join("\n", setting.Fuses.Select(f => $"Ammeter in place of the {f.Fuse} fuse: {Figures.Amperes(f.Current)} ({Figures.Number(f.Lowest.Amperes, 2)} to {Figures.Number(f.Highest.Amperes, 2)})  read {CommonBlocks.Blank}"))));
            blocks.Add(new Paragraph($"Lit: {Lamps(setting, Brightness.Normal)}. Dark: {Lamps(setting, Brightness.Dark)}."));
        }

        blocks.Add(new Heading($"Ohms, {(expected.EngineSpeed is null ? "battery disconnected" : "engine off, coil unplugged")}, everything off"));
        blocks.Add(Ohms(expected));
        blocks.Add(new SpreadsheetOnly(ToFillIn(expected)));
        blocks.Add(CommonBlocks.Safety);
        return new Document(
            CommonBlocks.TitleOf(expected.Bike, "Expected readings"),
            $"Meter (10 MΩ{(expected.EngineSpeed is null ? "" : ", AC volts")}) and test lamp from the point to battery minus, {Engine(expected)}; the range is what meter and harness allow.",
            blocks);
    }

    private static string Engine(ExpectedReadings expected) =>
        expected.EngineSpeed is { } speed ? $"engine at {Figures.Rpm(speed)}" : expected.Supply is { } supply ? $"battery held at {Figures.Volts(supply)}" : "engine off";

    private static Table Points(Bike bike, ExpectedSetting setting) => new(
        [
            new("point", "point"), new("volts", "voltageV", true), new("from", "lowestV", true), new("to", "highestV", true), new("test lamp", "testLamp"),
            .. bike.Earth == Earth.Positive ? [new Column("black on frame", "fromFrameV", true)] : Array.Empty<Column>(), new("read", "reading"),
        ],
        [
            .. setting.Points.Select(p => (IReadOnlyList<Cell>)
            [
                p.Point, Figures.Cell(p.Voltage), Figures.Cell(p.Lowest), Figures.Cell(p.Highest), TestLampWord(p.TestLamp),
                .. bike.Earth == Earth.Positive ? [Figures.Cell(p.FromFrame)] : Array.Empty<Cell>(), CommonBlocks.Blank,
            ]),
        ]);

    private static Table Ohms(ExpectedReadings expected) => new(
        [new("part", "part"), new("in place", "inPlace", true), new("taken out", "alone", true), new("read", "reading")],
        [.. expected.Ohms.Select(o => (IReadOnlyList<Cell>)[o.Part, o.IsKnown ? o.InCircuit is { } ohms ? Figures.MeterOhms(ohms) : "open" : "not known", o.Isolated is { } isolated ? Figures.MeterOhms(isolated) : "-", CommonBlocks.Blank])]);

    private static Table ToFillIn(ExpectedReadings expected) => new(
        [new("when", "when"), new("point", "point"), new("instrument", "instrument"), new("reading", "reading")],
        [.. expected.Rows.Select(r => (IReadOnlyList<Cell>)[r.When.ToString(), r.Point, InstrumentWord(r.Instrument), ""])],
        IsMain: true);

    public static string InstrumentWord(Instrument instrument) => instrument switch
    {
        Instrument.Meter => "meter",
        Instrument.TestLamp => "test lamp",
        Instrument.Ammeter => "ammeter",
        Instrument.Ohmmeter => "ohmmeter",
        Instrument.Visual => "eye",
        _ => throw new InvalidOperationException($"Unknown instrument {instrument}."),
    };

    private static string TestLampWord(Brightness brightness) => brightness switch
    {
        Brightness.Dark => "dark",
        Brightness.Dim => "dim",
        _ => "lit",
    };

    private static string Lamps(ExpectedSetting setting, Brightness seen)
    {
        string all = string.Join(", ", setting.Lamps.Where(l => l.Seen == seen).Select(l => l.Lamp));
        return all.Length == 0 ? "none" : all;
    }
}
