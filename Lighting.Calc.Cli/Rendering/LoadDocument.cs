using Lighting.Calc.Network;
using Lighting.Calc.Verdicts;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>load</c> prints: each setting that draws anything, its circuits and lamps.</summary>
internal static class LoadDocument
{
    // Less is shown as no hundredth of an ampere.
    private const double LeastShown = 5e-3;

    public static Document Of(BikeReport report)
    {
        OperatingPoint[] drawing = [.. report.Settings.Where(p => p.TotalCurrent.Amperes > 1e-6).OrderByDescending(p => p.TotalCurrent.Amperes)];
        return new Document(
            CommonBlocks.TitleOf(report.Bike, "Load"),
            drawing.Length == 0
                ? "Nothing draws current in any of these settings."
                : $"Heaviest: {Figures.Amperes(drawing[0].TotalCurrent)} in the setting '{drawing[0].Setting}', of {report.Settings.Length} settings.",
            [
                new Heading($"Settings at {Figures.Volts(report.SupplyVoltage)}, heaviest first"),
                Settings(drawing),
                .. drawing.Take(1).SelectMany(p => new Block[] { new Heading($"Lamps in the heaviest setting ({p.Setting})"), Lamps([p], isMain: false) }),
                .. drawing.Length == 0 ? [] : new Block[] { Hidden(Lamps(drawing, isMain: true)) },
                CommonBlocks.Safety,
            ]);
    }

    // CSV gives every lamp in every setting; on a page that is too much.
    private static SpreadsheetOnly Hidden(Table table) => new(table);

    private static Table Settings(IEnumerable<OperatingPoint> points) => new(
        [new("total A", "totalCurrentA", true), new("watts", "powerW", true), new("by circuit, A", "circuits"), new("setting", "setting")],
        [
            .. points.Select(p => (IReadOnlyList<Cell>)
            [
                Figures.Cell(p.TotalCurrent), Figures.Cell(p.Lamps.Sum(l => (double)l.Power.Watts), 1),
                string.Join(", ", CircuitLoad.Of(p).Where(c => c.Amperes >= LeastShown).Select(c => $"{c.Circuit} {Figures.Number(c.Amperes, 2)}")), p.Setting.ToString(),
            ]),
        ]);

    private static Table Lamps(IEnumerable<OperatingPoint> points, bool isMain) => new(
        [
            new("lamp", "lamp"), new("circuit", "circuit"), new("quantity", "quantity", true), new("volts", "voltageV", true), new("amps", "currentA", true),
            new("watts", "powerW", true), new("light %", "relativeLightPercent", true), .. isMain ? [new Column("setting", "setting")] : Array.Empty<Column>(),
        ],
        [
            .. points.SelectMany(p => p.Lamps.Where(l => isMain || l.Current.Amperes > 1e-6).Select(l => (IReadOnlyList<Cell>)
            [
                l.Lamp.Lamp, l.Lamp.Circuit, CommonBlocks.Rating(l.Lamp.Quantity), Figures.Cell(l.Voltage), Figures.Cell(l.Current),
                Figures.Cell(l.Power), Figures.Percentage(l.RelativeLight), .. isMain ? [(Cell)p.Setting.ToString()] : Array.Empty<Cell>(),
            ])),
        ],
        isMain);
}
