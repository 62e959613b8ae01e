using Lighting.Calc.Charging;
using Lighting.Calc.Harness;
using Lighting.Calc.Network;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>charging</c> prints for a bike without a battery: lamp volts over engine speed, and what a lost lamp does to the rest.</summary>
internal static class DirectLightingDocument
{
    // With the coil's own, as many lines as a reader keeps apart.
    private const int MostLines = 5;

    public static Document Of(Bike bike, DirectLightingReport report) => new(
        CommonBlocks.TitleOf(bike, "Direct lighting"),
        $"The lamps are fed by the lighting coil without a battery ({report.Setting}): {Range(report)}.",
        [
            new Heading("Volts (rms) over engine speed"),
            Volts(report),
            .. Chart(report) is { } chart ? [new PageOnly(chart)] : Array.Empty<Block>(),
            new Heading($"If one lamp fails at {Figures.Rpm(report.Points[^1].Speed)}"),
            Losses(report),
            .. CommonBlocks.FindingBlocks(report.Findings),
            CommonBlocks.Safety,
        ]);

    /// <summary>The span of the coil's volts over the speeds looked at.</summary>
    public static string Range(DirectLightingReport report) =>
        $"{Figures.Volts(report.Points[0].TerminalVoltage)} at {Figures.Rpm(report.Points[0].Speed)}, {Figures.Volts(report.Points[^1].TerminalVoltage)} at {Figures.Rpm(report.Points[^1].Speed)}";

    /// <summary>The lit lamps' volts over engine speed; null with fewer than two speeds.</summary>
    public static LineChart? Chart(DirectLightingReport report)
    {
        if (report.Points.Length < 2)
            return null;
        ChartLine[] lines =
        [
            new("lighting coil", [.. report.Points.Select(p => new ChartPoint(p.Speed.RevolutionsPerMinute, p.TerminalVoltage.Volts))]),
            .. report.Points[^1].Lamps.Index().Where(l => l.Item.Current.Amperes > 1e-3).Take(MostLines)
                .Select(l => new ChartLine(l.Item.Lamp.Lamp, [.. report.Points.Select(p => new ChartPoint(p.Speed.RevolutionsPerMinute, p.Lamps[l.Index].Voltage.Volts))])),
        ];
        return new LineChart("Volts over engine speed", $"In the setting {report.Setting}: {Range(report)}.", "engine speed, rpm", "volts (rms)", lines, [], 0, 0);
    }

    private static Table Volts(DirectLightingReport report)
    {
        LampState[] lit = [.. report.Points[^1].Lamps.Where(l => l.Current.Amperes > 1e-3)];
        return new Table(
            [new("rpm", "rpm", true), new("coil V", "coilV", true), new("amps", "currentA", true), .. lit.Select(l => new Column(l.Lamp.Lamp, l.Lamp.Lamp + "V", true))],
            [
                .. report.Points.Select(p => (IReadOnlyList<Cell>)
                [
                    Figures.Cell(p.Speed.RevolutionsPerMinute, 0), Figures.Cell(p.TerminalVoltage), Figures.Cell(p.Current),
                    .. lit.Select(l => Figures.Cell(p.Lamps.First(s => s.Lamp.Lamp == l.Lamp.Lamp).Voltage)),
                ]),
            ],
            IsMain: true);
    }

    private static Table Losses(DirectLightingReport report) => new(
        [new("lost lamp", "lamp"), new("coil V then", "afterV", true), new("was V", "beforeV", true), new("resistor that mends it", "mend")],
        [
            .. report.Losses.Select(l => (IReadOnlyList<Cell>)
            [
                l.Lamp.Lamp, Figures.Cell(l.After.TerminalVoltage), Figures.Cell(l.Before.TerminalVoltage),
                l.Mend is { } resistor ? $"{Figures.Ohms(resistor.Resistance)}, {Figures.Watts(resistor.Power)}" : "none needed",
            ]),
        ]);
}
