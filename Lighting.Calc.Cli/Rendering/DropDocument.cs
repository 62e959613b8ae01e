using System.Collections.Immutable;
using Lighting.Calc.Network;
using Lighting.Calc.Verdicts;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>drop</c> prints: each lamp's ledger in its worst setting, and what mending the costliest parts would gain.</summary>
internal static class DropDocument
{
    public static Document Of(BikeReport report)
    {
        DropLedger[] ledgers = [.. report.WorstDrops.OrderByDescending(d => d.Lamp.Drop!.Value.DecimalFractions)];
        return new Document(CommonBlocks.TitleOf(report.Bike, "Drops"), Verdict(report, ledgers),
            [
                new Heading($"Volts from the source ({Figures.Volts(report.SupplyVoltage)}) to each lamp and back, in its worst setting"),
                Ledgers(ledgers),
                .. report.Bike.HasNetwork && ledgers.Length > 0 ? [new PageOnly(ReportCharts.Ledgers(report)), new PageOnly(CircuitBlock.Of(report.Bike, report.Settings.First(p => p.Setting.Equals(ledgers[0].Setting))))] : Array.Empty<Block>(),
                .. ledgers.Take(1).SelectMany(d => new Block[] { new Heading($"Ledger of {d.Lamp.Lamp.Lamp} ({d.Setting})"), Ledger(d) }),
                .. ledgers.Take(1).SelectMany(d => Mending(report, d)),
                new SpreadsheetOnly(Parts(ledgers)),
                CommonBlocks.Safety,
            ]);
    }

    private static string Verdict(BikeReport report, DropLedger[] ledgers)
    {
        if (!report.Bike.HasNetwork)
            return "There is no list of runs (runs.csv): lamps are taken straight on the battery, and drops are not included.";
        if (ledgers.Length == 0)
            return "No lamp is fed in any of these settings.";
        string worst = $"Worst: {ledgers[0].Lamp.Lamp.Lamp} gets {Figures.Volts(ledgers[0].Lamp.Voltage)}, {Figures.Percent(ledgers[0].Lamp.Drop!.Value)} lost";
        int over = ledgers.Count(d => d.Lamp.Drop!.Value.Percent > report.Bike.AllowedDrop.Percent + 1e-9);
        return over == 0
            ? $"{worst}; every lamp stays within the {Figures.Percent(report.Bike.AllowedDrop)} allowed."
            : $"{worst}; {over} of {ledgers.Length} lamps lose more than the {Figures.Percent(report.Bike.AllowedDrop)} allowed.";
    }

    /// <summary>Each lamp's losses by kind.</summary>
    public static Table Ledgers(IEnumerable<DropLedger> ledgers) => new(
        [
            new("lamp", "lamp"), new("volts", "voltageV", true), new("feed", "feedV", true), new("joints", "jointV", true), new("switch", "switchV", true),
            new("fuse", "fuseV", true), new("return", "returnV", true), new("drop%", "dropPercent", true), new("dim%", "lightLostPercent", true),
        ],
        [
            .. ledgers.Select(d => (IReadOnlyList<Cell>)
            [
                d.Lamp.Lamp.Lamp, Figures.Cell(d.Lamp.Voltage), Lost(d, DropKind.FeedWire), Figures.Cell((d.DropIn(DropKind.FeedJoint) + d.DropIn(DropKind.ReturnJoint)).Volts, 2),
                Lost(d, DropKind.Switch), Lost(d, DropKind.Fuse), Lost(d, DropKind.ReturnWire), Figures.Percentage(d.Lamp.Drop), Figures.Percentage(d.LightLost),
            ]),
        ]);

    private static Table Ledger(DropLedger ledger) => new(
        [new("from the source to the lamp and back", "part"), new("kind", "kind"), new("amps", "currentA", true), new("volts", "dropV", true), new("%", "sharePercent", true)],
        [
            ["source", "", "", Figures.Cell(ledger.SupplyVoltage.Volts, 3), "100.0"],
            .. ledger.Entries.Select(e => (IReadOnlyList<Cell>)[e.Part, DropWords.Of(e.Kind), Figures.Cell(e.Current), Figures.Cell(-e.Voltage.Volts, 3), Figures.Cell(-e.Share.Percent, 1)]),
            [ledger.Lamp.Lamp.Lamp, "lamp", Figures.Cell(ledger.Lamp.Current), Figures.Cell(ledger.Lamp.Voltage.Volts, 3), Figures.Cell(100 * (ledger.Lamp.Voltage / ledger.SupplyVoltage), 1)],
        ]);

    private static IEnumerable<Block> Mending(BikeReport report, DropLedger ledger)
    {
        ImmutableArray<MendingGain> gains = DropAnalysis.CostliestOf(report.Network, ledger);
        if (gains.IsEmpty)
            yield break;
        yield return new Heading($"What {ledger.Lamp.Lamp.Lamp} would gain ({ledger.Setting}) if a part lost nothing");
        yield return new Table(
            [new("part", "part"), new("kind", "kind"), new("loses V", "dropV", true), new("gain V", "gainV", true), new("gain in light %", "gainLightPercent", true)],
            [
                .. gains.Select(g => (IReadOnlyList<Cell>)
                [
                    g.Entry.Part, DropWords.Of(g.Entry.Kind), Figures.Cell(g.Entry.Voltage.Volts, 3), Figures.Cell(g.Voltage.Volts, 3), Figures.Percentage(g.Light),
                ]),
            ]);
    }

    private static Table Parts(IEnumerable<DropLedger> ledgers) => new(
        [
            new("lamp", "lamp"), new("setting", "setting"), new("supply V", "supplyVoltageV", true), new("lamp V", "lampVoltageV", true), new("kind", "kind"), new("part", "part"),
            new("current A", "currentA", true), new("drop V", "dropV", true), new("share %", "sharePercent", true),
        ],
        [
            .. ledgers.SelectMany(d => d.Entries.Select(e => (IReadOnlyList<Cell>)
            [
                d.Lamp.Lamp.Lamp, d.Setting.ToString(), Figures.Cell(d.SupplyVoltage), Figures.Cell(d.Lamp.Voltage), DropWords.Of(e.Kind), e.Part,
                Figures.Cell(e.Current), Figures.Cell(e.Voltage.Volts, 3), Figures.Percentage(e.Share),
            ])),
        ],
        IsMain: true);

    private static Cell Lost(DropLedger ledger, DropKind kind) => Figures.Cell(ledger.DropIn(kind).Volts, 2);
}
