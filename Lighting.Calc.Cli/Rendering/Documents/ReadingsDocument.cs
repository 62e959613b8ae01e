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
        {
            "read",
            "",
            o =>
                o.IsKnown
                    ? ReadingField.Cell(
                        new Reading
                        {
                            When = Condition.Always,
                            Point = o.Part,
                            Instrument = Instrument.Ohmmeter,
                        },
                        o.InCircuit is { } ohms ? Plain(ohms.Ohms, 2) : "open"
                    )
                    : CommonBlocks.Blank
        },
    };

    private static readonly Columns<ExpectedJumper> s_jumper = new()
    {
        { null, "use", j => j.Use.ToString().ToLowerInvariant() },
        { "part", "part", j => j.Part },
        { "switches", "setting", j => j.Setting },
        { "jumper", "jumper", j => j.Lead.ToString() },
        {
            "fuse to A",
            "largestFuseA",
            j => new Cell(
                j.LargestFuse is { } fuse ? Figures.Number(fuse.Amperes, 1) : "the circuit's",
                j.LargestFuse?.Amperes,
                IsNumber: true
            )
        },
        { "watch", "lamp", j => j.Lamp },
        { "lit", "lit", j => j.Lit },
        { "gains %", "gainPercent", j => Figures.Cell(Math.Round(j.Gain.Percent), 0) },
        { "read", "", j => ReadingField.Cell(RowOf(j), "") },
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
        { "instrument", "instrument", r => FaultWords.InstrumentWord(r.Instrument) },
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
                    .. expected.Settings.SelectMany(s => Sheet(expected, s)),
                    .. Rest(expected),
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
                        { "points", Points(expected, expected.Settings[0]), s => s.Points },
                        { "fuses", s_fuse, s => s.Fuses },
                        { "lamps", s_lamp, s => s.Lamps },
                    },
                    expected.Settings
                );
                if (expected.Drain is { } drain)
                    json.Write("drain", s_drain, drain);
                json.Write("jumpers", s_jumper, expected.Jumpers);
                json.Write("ohms", s_ohms, expected.Ohms);
                json.Write("findings", CommonBlocks.Finding, expected.Notes);
            }
        )
        {
            IsForm = true,
            StepCautions =
            [
                .. expected.Jumpers.IsEmpty ? Array.Empty<CautionList>() : [Cautions.OfJumpers],
                Cautions.OfOhms(expected.Bike),
            ],
            Page = () =>
                [
                    .. expected
                        .Notes.Where(n => n.Subject != Ohmmeter && n.Kind != FindingKind.MeterOnPositiveEarth)
                        .Select(n => new Paragraph(n.Message)),
                    .. expected.Settings.SelectMany(s => FilledIn(expected, s)),
                    .. Rest(expected),
                ],
        };

    // What follows the settings.
    private static IEnumerable<Block> Rest(ExpectedReadings expected) =>
        [
            .. Drain(expected),
            .. Jumpers(expected),
            new Heading(
                IsCoil(expected)
                    ? "Resistance, engine off, coil unplugged, everything off"
                    : "Resistance, battery disconnected, everything off"
            ),
            Cautions.OfOhms(expected.Bike),
            .. expected.Notes.Where(n => n.Subject == Ohmmeter).Select(n => new Paragraph(n.Message)),
            s_ohms.Table(expected.Ohms),
        ];

    // Cautions, then the three uses of the jumper, each with what its outcome says.
    private static IEnumerable<Block> Jumpers(ExpectedReadings expected)
    {
        if (expected.Jumpers.IsEmpty)
            yield break;
        yield return new Heading("Jumper, engine off");
        yield return Cautions.OfJumpers;
        foreach (
            (JumperUse use, string words) in new[]
            {
                (
                    JumperUse.Feed,
                    "From the battery's live terminal to the feed of a lamp. Lit as listed: the fault is before the "
                        + "feed. Still dark: the lamp, its holder or its earth."
                ),
                (
                    JumperUse.Return,
                    "From the return of a lamp that is switched on to the battery's earthed terminal. Much brighter "
                        + "than listed: the earth between them is poor."
                ),
                (
                    JumperUse.Across,
                    "Across one contact, wire with its connectors, or earth. Much brighter than listed: that part is "
                        + "poor."
                ),
            }
        )
        {
            ExpectedJumper[] tests = [.. expected.Jumpers.Where(j => j.Use == use)];
            if (tests.Length == 0)
                continue;
            yield return new Paragraph(words);
            foreach (IGrouping<Setting, ExpectedJumper> setting in tests.GroupBy(j => j.Setting))
            {
                yield return new Paragraph($"With {setting.Key}:");
                yield return s_jumper
                    .Only(
                        use == JumperUse.Feed
                            ? ["part", "jumper", "largestFuseA", "lit", ""]
                            : ["part", "jumper", "largestFuseA", "lamp", "gainPercent", ""]
                    )
                    .Table(setting);
            }
        }
    }

    private static Reading RowOf(ExpectedJumper test) =>
        new()
        {
            When = test.Setting.AsCondition(),
            Point = test.Lamp,
            Instrument = Instrument.Visual,
            Jumper = test.Lead,
        };

    // As lists write numbers.
    private static string Plain(double number, int decimals) =>
        Math.Round(number, decimals).ToString(System.Globalization.CultureInfo.InvariantCulture);

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

    // A page has a field for every reading.
    private static IEnumerable<Block> FilledIn(ExpectedReadings expected, ExpectedSetting setting)
    {
        Condition when = When(expected, setting);
        yield return new Heading($"Switches: {setting.Setting}");
        yield return new Columns<ExpectedLook>
        {
            { "lamp", "lamp", l => l.Lamp },
            { "looks", "seen", l => LookWord(l.Seen) },
            { "read", "", l => ReadingField.Cell(Row(when, l.Lamp, Instrument.Visual), LookWord(l.Seen)) },
        }.Table(setting.Lamps);
        yield return Points(expected, setting).Table(setting.Points);
        if (setting.Fuses.IsEmpty)
            yield break;
        yield return new Columns<ExpectedCurrent>
        {
            { "ammeter in place of the fuse", "fuse", f => f.Fuse },
            { "A", "currentA", f => f.Current },
            { "from", "lowestA", f => f.Lowest },
            { "to", "highestA", f => f.Highest },
            {
                "read",
                "",
                f => ReadingField.Cell(Row(when, f.Fuse, Instrument.Ammeter), Plain(f.Current.Amperes, 2))
            },
        }.Table(setting.Fuses);
        foreach (
            string range in setting.Fuses.Select(f => Cautions.RangeOf(f.Highest)).Where(r => r.Length > 0).Distinct()
        )
            yield return new Paragraph(range);
    }

    private static Reading Row(Condition when, string point, Instrument instrument) =>
        new()
        {
            When = when,
            Point = point,
            Instrument = instrument,
        };

    // As the rows to fill in have it.
    private static Condition When(ExpectedReadings expected, ExpectedSetting setting) =>
        IsCoil(expected) || expected.EngineSpeed is not { } speed
            ? setting.Setting.AsCondition()
            : EngineTerm.With(setting.Setting, speed.RevolutionsPerMinute);

    private static IEnumerable<Block> Sheet(ExpectedReadings expected, ExpectedSetting setting)
    {
        yield return new Heading($"Switches: {setting.Setting}");
        yield return Points(expected, setting).Table(setting.Points);
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

    private static Columns<ExpectedReading> Points(ExpectedReadings expected, ExpectedSetting setting)
    {
        Condition when = When(expected, setting);
        return new()
        {
            { "point", "point", p => p.Point },
            { "V", "voltageV", p => p.Voltage },
            { "from", "lowestV", p => p.Lowest },
            { "to", "highestV", p => p.Highest },
            { "test lamp", "testLamp", p => new Cell(TestLampWord(p.TestLamp), LookWord(p.TestLamp)) },
            { expected.Bike.Earth == Earth.Positive ? "black on frame" : null, "fromFrameV", p => p.FromFrame },
            {
                "read",
                "",
                p => ReadingField.Cell(Row(when, p.Point, Instrument.Meter), Plain(p.Voltage.Volts, 2))
            },
        };
    }

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
