using System.Collections.Immutable;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>drop</c> gives: each lamp's voltage-drop breakdown in its worst setting, and the improvement from
/// repairing the parts that drop most.</summary>
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

    private static readonly Columns<(VoltageDropBreakdown Breakdown, VoltageDropItem Entry)> s_part = new()
    {
        { "lamp", "lamp", p => p.Breakdown.Lamp.Lamp.Lamp },
        { "setting", "setting", p => p.Breakdown.Setting },
        { "supply V", "supplyVoltageV", p => p.Breakdown.SupplyVoltage },
        { "lamp V", "lampVoltageV", p => p.Breakdown.Lamp.Voltage },
        { s_entry.Only("kind", "part", "currentA", "dropV", "sharePercent", "limitV"), p => p.Entry },
    };

    private static readonly Columns<RepairBenefit> s_gain = new()
    {
        { "part", "part", g => g.Entry.Part },
        { "kind", "kind", g => DropWords.Of(g.Entry.Kind) },
        { "drops V", "", g => g.Entry.Voltage },
        { "gain V", "gainV", g => g.Voltage },
        { "light gain %", "gainLight", g => g.Light },
    };

    /// <summary>Each lamp's voltage drop by kind of part.</summary>
    public static Columns<VoltageDropBreakdown> Breakdowns(BikeReport report)
    {
        // Of all lamps together, when the first of them is asked for.
        var repairs = new Lazy<Dictionary<VoltageDropBreakdown, ImmutableArray<RepairBenefit>>>(() =>
            report
                .WorstDrops.Zip(VoltageDropAnalysis.LargestDropsOfEach(report.Network, report.WorstDrops))
                .ToDictionary(p => p.First, p => p.Second)
        );
        return new()
        {
            { "lamp", "lamp", d => d.Lamp.Lamp.Lamp },
            { "setting", d => d.Setting },
            { "supply V", "supplyVoltageV", d => d.SupplyVoltage },
            { "lamp V", "voltageV", d => d.Lamp.Voltage },
            { "currentA", d => d.Lamp.Current },
            { "feed", "", d => d.DropIn(VoltageDropKind.FeedWire) },
            { "joints", "", d => d.DropIn(VoltageDropKind.FeedJoint) + d.DropIn(VoltageDropKind.ReturnJoint) },
            { "switch", "", d => d.DropIn(VoltageDropKind.Switch) },
            { "fuse", "", d => d.DropIn(VoltageDropKind.Fuse) },
            { "return", "", d => d.DropIn(VoltageDropKind.ReturnWire) },
            {
                "drop %",
                "dropPercent",
                d => ((Cell)d.Lamp.Drop).Beyond(d.Lamp.Drop is { } drop && LimitOf(report, d).IsExceededBy(drop))
            },
            { "limit %", "allowedDropPercent", d => LimitOf(report, d).Share },
            { "relativeLight", d => d.Lamp.PublishedLight },
            { "dimmer %", "lightLost", d => d.LightLost },
            { "batteryDropV", d => d.BatteryDrop },
            { "breakdown", s_entry, d => d.Entries },
            {
                "repairs",
                s_gain.Only("kind", "part", "gainV", "gainLight"),
                d => repairs.Value[d]
            },
        };
    }

    public static Document Of(BikeReport report, IReadOnlyCollection<RelayPlan> relays)
    {
        VoltageDropBreakdown[] breakdowns =
        [
            .. report.WorstDrops.OrderByDescending(d => d.Lamp.Drop!.Value.DecimalFractions),
        ];
        return new Document(
            CommonBlocks.TitleOf(report.Bike, "Voltage drop"),
            CommonBlocks.Within(report.When, Verdict(report, breakdowns)),
            Cautions.OfWork(report.Bike),
            () =>
                [
                    new Heading(Source(report)),
                    Breakdowns(report).Table(breakdowns),
                    new PageOnly(() =>
                        report.Bike.HasNetwork && breakdowns.Length > 0
                            ?
                            [
                                ReportCharts.Breakdowns(report),
                                CircuitBlock.Of(
                                    report.Bike,
                                    report.Settings.First(p => p.Setting.Equals(breakdowns[0].Setting)),
                                    Drawing.UnsuitableParts.Of(report)
                                ),
                            ]
                            : []
                    ),
                    .. CleanFirst(breakdowns),
                    .. breakdowns
                        .Take(1)
                        .SelectMany(d =>
                            new Block[]
                            {
                                new Heading($"Voltage-drop breakdown of {d.Lamp.Lamp.Lamp} ({d.Setting})"),
                                Breakdown(d),
                            }
                        ),
                    .. breakdowns.Take(1).SelectMany(d => Repairs(report, d)),
                    .. RelayDocument.Gains(relays),
                    s_part.Spreadsheet(breakdowns.SelectMany(d => d.Entries.Select(e => (d, e)))),
                ],
            json =>
            {
                json.Write("bike", report.Bike.Name);
                json.Write("supplyVoltageV", report.SupplyVoltage);
                json.Write("dropsIncluded", report.Bike.HasNetwork);
                json.Write("allowedDropPercent", report.Bike.AllowedDrop);
                json.Write("lamps", Breakdowns(report), report.WorstDrops);
                RelayDocument.WriteGains(json, relays);
            }
        );
    }

    private static string Verdict(BikeReport report, VoltageDropBreakdown[] breakdowns)
    {
        if (!report.Bike.HasNetwork)
            return "There is no list of runs (runs.csv): lamps are taken as connected directly across the battery, and "
                + "voltage drop is not included.";
        if (breakdowns.Length == 0)
            return "No lamp is fed in any of these settings.";
        string worst =
            $"Worst: {breakdowns[0].Lamp.Lamp.Lamp} {Figures.Volts(breakdowns[0].Lamp.Voltage)}, voltage drop "
            + $"{Figures.Percent(breakdowns[0].Lamp.Drop!.Value)}";
        int over = breakdowns.Count(d => LimitOf(report, d).IsExceededBy(d.Lamp.Drop!.Value));
        double[] limits = [.. breakdowns.Select(d => LimitOf(report, d).Share.Percent).Distinct().Order()];
        string limit =
            limits.Length == 1
                ? Figures.Percent(LimitOf(report, breakdowns[0]).Share)
                : $"{Figures.Number(limits[0], 1)} to {Figures.Number(limits[^1], 1)} %";
        return over == 0
            ? $"{worst}; every lamp is within the limit of {limit}."
            : $"{worst}; {over} of {breakdowns.Length} lamps exceed the limit of {limit}.";
    }

    private static DropLimit LimitOf(BikeReport report, VoltageDropBreakdown breakdown) =>
        DropLimit.Of(report.Bike, breakdown.Lamp.Lamp, breakdown.SupplyVoltage);

    // The joints, contacts and earths beyond the trade's limits: the first places to clean.
    private static IEnumerable<Block> CleanFirst(VoltageDropBreakdown[] breakdowns)
    {
        string[] places =
        [
            .. breakdowns
                .SelectMany(d => d.OverLimit)
                .DistinctBy(e => (e.Kind, e.Part))
                .OrderByDescending(e => e.Voltage / e.Limit!.Value)
                .Select(e =>
                    $"{e.Part} ({DropWords.Of(e.Kind)}) {Figures.Volts(e.Voltage)} (limit "
                    + $"{Figures.Volts(e.Limit!.Value)})"
                ),
            .. breakdowns
                .Where(d => d.IsEarthOverLimit)
                .Take(1)
                .Select(d =>
                    $"earth of {d.Lamp.Lamp.Lamp} {Figures.Volts(d.EarthDrop)} (limit {Figures.Volts(d.EarthLimit)})"
                ),
        ];
        return places.Length == 0 ? [] : [new Paragraph($"Clean first: {string.Join(", ", places)}.")];
    }

    // From the source's voltage down to the lamp's: what is lost is subtracted. What a discharging battery loses before
    // its terminals is no part of the drop.
    private static Table Breakdown(VoltageDropBreakdown breakdown) =>
        new Columns<(string Part, string Kind, Cell Current, double Volts, double? Percent)>
        {
            { "from the source to the lamp and back", "part", l => l.Part },
            { "kind", "kind", l => l.Kind },
            { "A", "currentA", l => l.Current },
            { "V", "dropV", l => l.Volts },
            { "%", "sharePercent", l => l.Percent, "F1" },
        }.Table([
            .. breakdown.BatteryDrop.Volts > 0
                ? new (string, string, Cell, double, double?)[]
                {
                    ("battery at rest", "", "", (breakdown.SupplyVoltage + breakdown.BatteryDrop).Volts, null),
                    ("battery, discharging", "battery", "", -breakdown.BatteryDrop.Volts, null),
                }
                : [],
            ("source", "", "", breakdown.SupplyVoltage.Volts, 100),
            .. breakdown.Entries.Select(e =>
                (e.Part, DropWords.Of(e.Kind), (Cell)e.Current, -e.Voltage.Volts, (double?)-e.Share.Percent)
            ),
            (
                breakdown.Lamp.Lamp.Lamp,
                "lamp",
                breakdown.Lamp.Current,
                breakdown.Lamp.Voltage.Volts,
                100 * (breakdown.Lamp.Voltage / breakdown.SupplyVoltage)
            ),
        ]);

    private static string Source(BikeReport report)
    {
        string source = report.Settings.Any(p => p.Bus is not null)
            ? $"{CommonBlocks.BusOf(report.Bike).TrimEnd(',')}, engine running,"
            : $"the source ({Figures.Volts(report.SupplyVoltage)})";
        return $"Voltage-drop breakdown from {source} to each lamp and back, in its worst lasting setting";
    }

    private static IEnumerable<Block> Repairs(BikeReport report, VoltageDropBreakdown breakdown)
    {
        ImmutableArray<RepairBenefit> gains = VoltageDropAnalysis.LargestDrops(report.Network, breakdown);
        return gains.IsEmpty
            ? []
            :
            [
                new Heading(
                    $"Improvement at {breakdown.Lamp.Lamp.Lamp} ({breakdown.Setting}) with a part at zero resistance"
                ),
                s_gain.Table(gains),
            ];
    }
}
