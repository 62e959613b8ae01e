namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>charging</c> gives for a bike without a battery: lamp voltage over engine speed, and what a failed
/// lamp does to the others.</summary>
internal static class DirectLightingDocument
{
    // With the coil's own, as many lines as a reader keeps apart.
    private const int MostLines = 5;

    private static readonly Columns<LampState> s_lamp = CommonBlocks.Lamp.Only(
        "lamp",
        "voltageV",
        "currentA",
        "relativeLight"
    );

    private static readonly Columns<DirectLightingPoint> s_point = new()
    {
        { "rpm", p => p.Speed },
        { "coilVoltageV", p => p.TerminalVoltage },
        { "currentA", p => p.Current },
        { "lamps", s_lamp, p => p.Lamps },
    };

    private static readonly Columns<DirectLightingChange> s_loss = new()
    {
        { "failed lamp", "lamp", l => l.Lamp.Lamp },
        { "coil V after", "coilVoltageAfterV", l => l.After.TerminalVoltage },
        { "coil V before", "coilVoltageBeforeV", l => l.Before.TerminalVoltage },
        {
            "equivalent resistor",
            "",
            l =>
                l.EquivalentResistor is { } resistor
                    ? $"{Figures.Ohms(resistor.Resistance)}, {Figures.Watts(resistor.Power)}"
                    : "none needed"
        },
        { "resistorOhm", l => l.EquivalentResistor?.Resistance },
        { "resistorPowerW", l => l.EquivalentResistor?.Power },
    };

    public static Document Of(Bike bike, DirectLightingReport report) =>
        new(
            CommonBlocks.TitleOf(bike, "Direct lighting"),
            $"The lamps are fed by the lighting coil without a battery ({report.Setting}): {Range(report)}.",
            Cautions.OfEngine(bike),
            () =>
                [
                    new Heading("Voltage (rms) over engine speed"),
                    Volts(report),
                    new PageOnly(() => [Chart(report)]),
                    new Heading($"If one lamp fails at {Figures.Rpm(report.Points[^1].Speed)}"),
                    s_loss.Table(report.Losses),
                    .. CommonBlocks.FindingBlocks(report.Findings),
                ],
            json =>
            {
                json.Write("bike", bike.Name);
                json.Write("setting", report.Setting);
                json.Write("points", s_point, report.Points);
                json.Write(
                    "losses",
                    s_loss.Only("lamp", "coilVoltageBeforeV", "coilVoltageAfterV", "resistorOhm", "resistorPowerW"),
                    report.Losses
                );
                json.Write("findings", CommonBlocks.Finding, report.Findings);
            }
        );

    /// <summary>The range of the coil's voltage over the speeds of the list.</summary>
    public static string Range(DirectLightingReport report) => CheckHeadline.RangeOf(report);

    /// <summary>The lit lamps' voltage over engine speed; null with fewer than two speeds.</summary>
    public static LineChart? Chart(DirectLightingReport report)
    {
        if (report.Points.Length < 2)
            return null;
        ChartLine[] lines =
        [
            new(
                "lighting coil",
                [.. report.Points.Select(p => new ChartPoint(p.Speed.RevolutionsPerMinute, p.TerminalVoltage.Volts))]
            ),
            .. report
                .Points[^1]
                .Lamps.Index()
                .Where(l => l.Item.Current.Amperes > 1e-3)
                .Take(MostLines)
                .Select(l => new ChartLine(
                    l.Item.Lamp.Lamp,
                    [
                        .. report.Points.Select(p => new ChartPoint(
                            p.Speed.RevolutionsPerMinute,
                            p.Lamps[l.Index].Voltage.Volts
                        )),
                    ]
                )),
        ];
        return new LineChart(
            "Voltage over engine speed",
            $"In the setting {report.Setting}: {Range(report)}.",
            "engine speed, rpm",
            "voltage, V (rms)",
            lines,
            [],
            0,
            0
        );
    }

    private static Table Volts(DirectLightingReport report)
    {
        var columns = new Columns<DirectLightingPoint>
        {
            { "rpm", "rpm", p => p.Speed },
            { "coil V", "coilV", p => p.TerminalVoltage },
            { "A", "currentA", p => p.Current },
        };
        foreach (string lamp in report.Points[^1].Lamps.Where(l => l.Current.Amperes > 1e-3).Select(l => l.Lamp.Lamp))
            columns.Add(lamp, lamp + "V", p => p.Lamps.First(s => s.Lamp.Lamp == lamp).Voltage);
        return columns.Table(report.Points, isMain: true);
    }
}
