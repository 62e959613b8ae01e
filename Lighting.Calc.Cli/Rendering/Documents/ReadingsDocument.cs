using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>readings</c> gives: a sheet with blanks for what was read; CSV is a <c>readings.csv</c> to fill
/// in.</summary>
internal static class ReadingsDocument
{
    // The note of how to measure resistance belongs to that part of the sheet.
    private const string Ohmmeter = "ohmmeter";

    private static readonly Columns<ExpectedCurrent> s_fuse = new()
    {
        { "fuse", f => f.Fuse },
        { "currentA", f => f.Current },
        { "lowestA", f => f.Lowest },
        { "highestA", f => f.Highest },
    };

    private static readonly Columns<ExpectedLook> s_lamp = new()
    {
        { "lamp", l => l.Lamp },
        { "seen", l => LookWord(l.Seen) },
        { "voltageV", l => l.Voltage },
    };

    private static readonly Columns<ExpectedOhms> s_ohms = new()
    {
        { "part", "part", o => o.Part },
        { "isKnown", o => o.IsKnown },
        {
            "in circuit",
            "inCircuitOhm",
            o => new Cell(
                o.IsKnown
                    ? o.InCircuit is { } ohms
                        ? Figures.MeterOhms(ohms)
                        : "open"
                    : "unknown",
                o.InCircuit?.Ohms,
                IsNumber: true
            )
        },
        {
            "out of circuit",
            "outOfCircuitOhm",
            o => new Cell(
                o.Isolated is { } isolated ? Figures.MeterOhms(isolated) : "-",
                o.Isolated?.Ohms,
                IsNumber: true
            )
        },
        { "read", "", _ => CommonBlocks.Blank },
    };

    private static readonly Columns<DrainTest> s_drain = new()
    {
        { "currentA", d => d.Current },
        { "acceptedA", _ => ParasiticDrain.Accepted },
        { "fuses", d => d.Fuses },
        { "runs", d => d.Runs },
    };

    // CSV keeps the columns of the list.
    private static readonly Columns<Reading> s_toFillIn = new()
    {
        { "when", "when", r => r.When.ToString() },
        { "point", "point", r => r.Point },
        { "instrument", "instrument", r => InstrumentWord(r.Instrument) },
        { "reading", "reading", _ => "" },
    };

    public static Document Of(ExpectedReadings expected) =>
        new(
            CommonBlocks.TitleOf(expected.Bike, "Expected readings"),
            $"Meter (10 MΩ{(IsCoil(expected) ? ", AC volts" : "")}) and test lamp from the point to "
                + $"battery minus, {Engine(expected)}; limits allow for meter accuracy and wiring tolerance.",
            Live(expected),
            () =>
                [
                    .. expected
                        .Notes.Where(n => n.Subject != Ohmmeter && n.Kind != FindingKind.MeterOnPositiveEarth)
                        .Select(n => new Paragraph(n.Message)),
                    .. expected.Settings.SelectMany(s => Sheet(expected.Bike, s)),
                    .. Drain(expected),
                    new Heading(
                        IsCoil(expected)
                            ? "Resistance, engine off, coil unplugged, everything off"
                            : "Resistance, battery disconnected, everything off"
                    ),
                    Cautions.OfOhms(expected.Bike),
                    .. expected.Notes.Where(n => n.Subject == Ohmmeter).Select(n => new Paragraph(n.Message)),
                    s_ohms.Table(expected.Ohms),
                    s_toFillIn.Spreadsheet(expected.Rows),
                ],
            json =>
            {
                json.Write("bike", expected.Bike.Name);
                json.Write("engineRpm", expected.EngineSpeed);
                json.Write(
                    "settings",
                    new Columns<ExpectedSetting>
                    {
                        { "setting", s => s.Setting },
                        { "points", Points(expected.Bike), s => s.Points },
                        { "fuses", s_fuse, s => s.Fuses },
                        { "lamps", s_lamp, s => s.Lamps },
                    },
                    expected.Settings
                );
                if (expected.Drain is { } drain)
                    json.Write("drain", s_drain, drain);
                json.Write("ohms", s_ohms, expected.Ohms);
                json.Write("findings", CommonBlocks.Finding, expected.Notes);
            }
        )
        {
            StepCautions = [Cautions.OfOhms(expected.Bike)],
        };

    private static bool IsCoil(ExpectedReadings expected) => expected.Bike.Lighting == LightingSupply.Direct;

    private static CautionList Live(ExpectedReadings expected)
    {
        ElectricCurrent[] fuses = [.. expected.Settings.SelectMany(s => s.Fuses).Select(f => f.Highest)];
        return WithPositiveEarth(
            Cautions.OfReadings(
                expected.Bike,
                expected.EngineSpeed is not null || expected.Supply > expected.Bike.BatteryVoltage,
                fuses.Length == 0 ? null : fuses.MaxBy(a => a.Amperes)
            ),
            expected.Notes
        );
    }

    /// <summary>The cautions, with the one of positive earth first where it is among the notes: whoever misses it reads
    /// every voltage wrongly.</summary>
    public static CautionList WithPositiveEarth(CautionList cautions, IEnumerable<Finding> notes) =>
        new([
            .. notes.Where(n => n.Kind == FindingKind.MeterOnPositiveEarth).Select(n => n.Message),
            .. cautions.Texts,
        ]);

    private static string Engine(ExpectedReadings expected) =>
        expected.EngineSpeed is { } speed ? $"engine at {Figures.Rpm(speed)}"
        : expected.Supply is { } supply ? $"battery held at {Figures.Volts(supply)}"
        : "engine off";

    // What takes the battery flat while the bike stands.
    private static IEnumerable<Block> Drain(ExpectedReadings expected)
    {
        if (expected.Drain is not { } drain)
            yield break;
        yield return new Heading("Drain on the battery, engine and everything off");
        yield return new Paragraph(
            $"Ammeter in the lead of the live battery terminal, in-line fuse, from its highest range down: "
                + $"{MilliAmperes(drain.Current)} by the lists; up to {MilliAmperes(ParasiticDrain.Accepted)} is "
                + $"accepted where something must stay on (service manuals)  read {CommonBlocks.Blank}"
        );
        if (expected.Bike.BatteryCapacity is { } capacity)
            yield return new Paragraph(
                "Time from full to half and to empty: "
                    + string.Join(
                        "; ",
                        new[] { 0.02, 0.1, 0.5 }
                            .Select(a => ElectricCurrent.FromAmperes(a))
                            .Select(a => $"{MilliAmperes(a)} {Days(capacity, a, 50)} and {Days(capacity, a, 100)}")
                    )
                    + ". Self-discharge is left out."
            );
        yield return new Paragraph(
            "If it is more: with the ammeter in place "
                + (
                    drain.Fuses.IsEmpty
                        ? ""
                        : $"take out one fuse after the other ({string.Join(", ", drain.Fuses)}), then "
                )
                + $"pull off the wires that stay live one by one, the farthest from the battery first: "
                + $"{string.Join(", ", drain.Runs)}. The drain is behind the one at which the "
                + "current falls; the rectifier is one of them."
        );
    }

    private static string Days(ElectricCharge capacity, ElectricCurrent current, double percent)
    {
        double days = ParasiticDrain.Time(capacity, current, Ratio.FromPercent(percent)).Days;
        return days >= 2 ? $"{Figures.Number(days, 0)} days" : $"{Figures.Number(days * 24, 0)} h";
    }

    private static string MilliAmperes(ElectricCurrent current) => $"{Figures.Number(current.Milliamperes, 0)} mA";

    private static IEnumerable<Block> Sheet(Bike bike, ExpectedSetting setting)
    {
        yield return new Heading($"Switches: {setting.Setting}");
        yield return Points(bike).Table(setting.Points);
        if (!setting.Fuses.IsEmpty)
            yield return new Paragraph(
                string.Join(
                    "\n",
                    setting.Fuses.Select(f =>
                        $"Ammeter in place of the {f.Fuse} fuse: {Figures.Amperes(f.Current)} "
                        + $"({Figures.Number(f.Lowest.Amperes, 2)} to {Figures.Number(f.Highest.Amperes, 2)})  read "
                        + $"{CommonBlocks.Blank}"
                        + $"{(Cautions.RangeOf(f.Highest) is { Length: > 0 } range ? $"\n{range}" : "")}"
                    )
                )
            );
        yield return new Paragraph(
            $"Lit: {Lamps(setting, Brightness.Normal)}. Dark: {Lamps(setting, Brightness.Dark)}."
        );
    }

    private static Columns<ExpectedReading> Points(Bike bike) =>
        new()
        {
            { "point", "point", p => p.Point },
            { "V", "voltageV", p => p.Voltage },
            { "from", "lowestV", p => p.Lowest },
            { "to", "highestV", p => p.Highest },
            { "test lamp", "testLamp", p => new Cell(TestLampWord(p.TestLamp), LookWord(p.TestLamp)) },
            { bike.Earth == Earth.Positive ? "black on frame" : null, "fromFrameV", p => p.FromFrame },
            { "read", "", _ => CommonBlocks.Blank },
        };

    public static string InstrumentWord(Instrument instrument) =>
        instrument switch
        {
            Instrument.Meter => "meter",
            Instrument.TestLamp => "test lamp",
            Instrument.Ammeter => "ammeter",
            Instrument.Ohmmeter => "ohmmeter",
            Instrument.Visual => "visual",
            Instrument.GoodLamp => "good lamp",
            Instrument.Bench => "bench",
            Instrument.BenchReversed => "bench reversed",
            _ => throw new InvalidOperationException($"Unknown instrument {instrument}."),
        };

    private static string LookWord(Brightness look) =>
        look == Brightness.Normal ? "good" : look.ToString().ToLowerInvariant();

    private static string TestLampWord(Brightness brightness) =>
        brightness switch
        {
            Brightness.Dark => "off",
            Brightness.Dim => "dim",
            _ => "lit",
        };

    private static string Lamps(ExpectedSetting setting, Brightness seen)
    {
        string all = string.Join(", ", setting.Lamps.Where(l => l.Seen == seen).Select(l => l.Lamp));
        return all.Length == 0 ? "none" : all;
    }
}
