using System.Collections.Immutable;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>drop</c> gives: each lamp's ledger in its worst setting, and what mending the costliest parts would gain.</summary>
internal static class DropDocument
{
    private static readonly Columns<VoltageDropItem> s_entry = new()
    {
        { "kind", "kind", e => DropWords.Of(e.Kind) },
        { "part", "part", e => e.Part },
        { "drop V", "dropV", e => e.Voltage },
        { "share %", "sharePercent", e => e.Share },
        { "current A", "currentA", e => e.Current },
        { "limit V", "limitV", e => e.Limit },
    };

    private static readonly Columns<(VoltageDropBreakdown Ledger, VoltageDropItem Entry)> s_part = new()
    {
        { "lamp", "lamp", p => p.Ledger.Lamp.Lamp.Lamp },
        { "setting", "setting", p => p.Ledger.Setting },
        { "supply V", "supplyVoltageV", p => p.Ledger.SupplyVoltage },
        { "lamp V", "lampVoltageV", p => p.Ledger.Lamp.Voltage },
        { s_entry.Only("kind", "part", "currentA", "dropV", "sharePercent", "limitV"), p => p.Entry },
    };

    private static readonly Columns<RepairBenefit> s_gain = new()
    {
        { "part", "part", g => g.Entry.Part },
        { "kind", "kind", g => DropWords.Of(g.Entry.Kind) },
        { "loses V", "", g => g.Entry.Voltage, "F3" },
        { "gain V", "gainV", g => g.Voltage, "F3" },
        { "gain in light %", "gainLight", g => g.Light },
    };

    /// <summary>Each lamp's losses by kind.</summary>
    public static Columns<VoltageDropBreakdown> Ledgers(BikeReport report) => new()
    {
        { "lamp", "lamp", d => d.Lamp.Lamp.Lamp },
        { "setting", d => d.Setting },
        { "volts", "voltageV", d => d.Lamp.Voltage },
        { "currentA", d => d.Lamp.Current },
        { "feed", "", d => d.DropIn(VoltageDropKind.FeedWire) },
        { "joints", "", d => d.DropIn(VoltageDropKind.FeedJoint) + d.DropIn(VoltageDropKind.ReturnJoint) },
        { "switch", "", d => d.DropIn(VoltageDropKind.Switch) },
        { "fuse", "", d => d.DropIn(VoltageDropKind.Fuse) },
        { "return", "", d => d.DropIn(VoltageDropKind.ReturnWire) },
        { "drop%", "dropPercent", d => d.Lamp.Drop },
        { "limit%", "allowedDropPercent", d => LimitOf(report, d).Share },
        { "relativeLight", d => d.Lamp.PublishedLight },
        { "dim%", "lightLost", d => d.LightLost },
        { "ledger", s_entry, d => d.Entries },
        { "mending", s_gain.Only("kind", "part", "gainV", "gainLight"), d => VoltageDropAnalysis.LargestDrops(report.Network, d) },
    };

    public static Document Of(BikeReport report)
    {
        VoltageDropBreakdown[] ledgers = [.. report.WorstDrops.OrderByDescending(d => d.Lamp.Drop!.Value.DecimalFractions)];
        return new Document(
            CommonBlocks.TitleOf(report.Bike, "Drops"),
            Verdict(report, ledgers),
            () =>
            [
                new Heading($"Volts from the source ({Figures.Volts(report.SupplyVoltage)}) to each lamp and back, in its worst setting"),
                Ledgers(report).Table(ledgers),
                new PageOnly(() => report.Bike.HasNetwork && ledgers.Length > 0 ? [ReportCharts.Ledgers(report), CircuitBlock.Of(report.Bike, report.Settings.First(p => p.Setting.Equals(ledgers[0].Setting)))] : []),
                .. CleanFirst(ledgers),
                .. ledgers.Take(1).SelectMany(d => new Block[] { new Heading($"Ledger of {d.Lamp.Lamp.Lamp} ({d.Setting})"), Ledger(d) }),
                .. ledgers.Take(1).SelectMany(d => Mending(report, d)),
                s_part.Spreadsheet(ledgers.SelectMany(d => d.Entries.Select(e => (d, e)))),
                CommonBlocks.Safety,
            ],
            json =>
            {
                json.Write("bike", report.Bike.Name);
                json.Write("supplyVoltageV", report.SupplyVoltage);
                json.Write("dropsIncluded", report.Bike.HasNetwork);
                json.Write("allowedDropPercent", report.Bike.AllowedDrop);
                json.Write("lamps", Ledgers(report), report.WorstDrops);
            });
    }

    private static string Verdict(BikeReport report, VoltageDropBreakdown[] ledgers)
    {
        if (!report.Bike.HasNetwork)
            return "There is no list of runs (runs.csv): lamps are taken straight on the battery, and drops are not included.";
        if (ledgers.Length == 0)
            return "No lamp is fed in any of these settings.";
        string worst = $"Worst: {ledgers[0].Lamp.Lamp.Lamp} gets {Figures.Volts(ledgers[0].Lamp.Voltage)}, {Figures.Percent(ledgers[0].Lamp.Drop!.Value)} lost";
        int over = ledgers.Count(d => LimitOf(report, d).IsExceededBy(d.Lamp.Drop!.Value));
        double[] limits = [.. ledgers.Select(d => LimitOf(report, d).Share.Percent).Distinct().Order()];
        string allowed = limits.Length == 1 ? Figures.Percent(LimitOf(report, ledgers[0]).Share) : $"{Figures.Number(limits[0], 1)} to {Figures.Number(limits[^1], 1)} %";
        return over == 0
            ? $"{worst}; every lamp stays within the {allowed} allowed."
            : $"{worst}; {over} of {ledgers.Length} lamps lose more than the {allowed} allowed.";
    }

    private static DropLimit LimitOf(BikeReport report, VoltageDropBreakdown ledger) => DropLimit.Of(report.Bike, ledger.Lamp.Lamp, ledger.SupplyVoltage);

    // The joints, contacts and earths beyond the trade's limits: the first places to clean.
    private static IEnumerable<Block> CleanFirst(VoltageDropBreakdown[] ledgers)
    {
        string[] places =
        [
            .. ledgers.SelectMany(d => d.OverLimit).DistinctBy(e => (e.Kind, e.Part)).OrderByDescending(e => e.Voltage / e.Limit!.Value)
                .Select(e => $"{e.Part} ({DropWords.Of(e.Kind)}) {Figures.Volts(e.Voltage)} (limit {Figures.Volts(e.Limit!.Value)})"),
            .. ledgers.Where(d => d.IsEarthOverLimit).Take(1).Select(d => $"earth of {d.Lamp.Lamp.Lamp} {Figures.Volts(d.EarthDrop)} (limit {Figures.Volts(d.EarthLimit)})"),
        ];
        return places.Length == 0 ? [] : [new Paragraph($"Clean first: {string.Join(", ", places)}.")];
    }

    // From the source's voltage down to the lamp's: what is lost is subtracted.
    private static Table Ledger(VoltageDropBreakdown ledger) => new Columns<(string Part, string Kind, Cell Current, double Volts, double Percent)>
    {
        { "from the source to the lamp and back", "part", l => l.Part },
        { "kind", "kind", l => l.Kind },
        { "amps", "currentA", l => l.Current },
        { "volts", "dropV", l => l.Volts, "F3" },
        { "%", "sharePercent", l => l.Percent, "F1" },
    }.Table(
    [
        ("source", "", "", ledger.SupplyVoltage.Volts, 100),
        .. ledger.Entries.Select(e => (e.Part, DropWords.Of(e.Kind), (Cell)e.Current, -e.Voltage.Volts, -e.Share.Percent)),
        (ledger.Lamp.Lamp.Lamp, "lamp", ledger.Lamp.Current, ledger.Lamp.Voltage.Volts, 100 * (ledger.Lamp.Voltage / ledger.SupplyVoltage)),
    ]);

    private static IEnumerable<Block> Mending(BikeReport report, VoltageDropBreakdown ledger)
    {
        ImmutableArray<RepairBenefit> gains = VoltageDropAnalysis.LargestDrops(report.Network, ledger);
        return gains.IsEmpty ? [] : [new Heading($"What {ledger.Lamp.Lamp.Lamp} would gain ({ledger.Setting}) if a part lost nothing"), s_gain.Table(gains)];
    }
}
