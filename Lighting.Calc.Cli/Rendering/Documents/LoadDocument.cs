namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>load</c> gives: each setting that draws anything, its circuits and lamps.</summary>
internal static class LoadDocument
{
    // Less is shown as no hundredth of an ampere.
    private const double LeastShown = 5e-3;

    private static readonly Columns<OperatingPoint> s_setting = new()
    {
        { "total A", "totalCurrentA", p => p.TotalCurrent },
        { "supply V", "supplyVoltageV", p => p.SupplyVoltage },
        { "W", "powerW", p => p.Lamps.Sum(l => (double)l.Power.Watts), "F1" },
        {
            "by circuit, A",
            "circuits",
            p =>
                string.Join(
                    ", ",
                    CircuitLoad
                        .Of(p)
                        .Where(c => c.Amperes >= LeastShown)
                        .Select(c => $"{c.Circuit} {Figures.Number(c.Amperes, 2)}")
                )
        },
        { "setting", "setting", p => p.Setting },
    };

    private static readonly Columns<LampState> s_lamp = CommonBlocks.Lamp.Only(
        "lamp",
        "circuit",
        "quantity",
        "voltageV",
        "currentA",
        "powerW",
        "relativeLight"
    );

    // CSV gives every lamp in every setting; on a page that is too much.
    private static readonly Columns<(OperatingPoint Point, LampState Lamp)> s_everyLamp = new()
    {
        { s_lamp, l => l.Lamp },
        { "setting", "setting", l => l.Point.Setting },
    };

    public static Document Of(BikeReport report)
    {
        OperatingPoint[] drawing =
        [
            .. report.Settings.Where(p => p.TotalCurrent.Amperes > 1e-6).OrderByDescending(p => p.TotalCurrent.Amperes),
        ];
        return new Document(
            CommonBlocks.TitleOf(report.Bike, "Load"),
            drawing.Length == 0
                ? "Nothing draws current in any of these settings."
                : $"Heaviest: {Figures.Amperes(drawing[0].TotalCurrent)} in the setting '{drawing[0].Setting}', of "
                    + $"{report.Settings.Length} settings.",
            Cautions.OfWork(report.Bike),
            () =>
                [
                    new Heading($"Settings{CommonBlocks.At(report)}, heaviest first"),
                    s_setting.Table(drawing) with
                    {
                        ShownRows = 10,
                    },
                    .. drawing.Length == 0
                        ? []
                        : new Block[]
                        {
                            new Heading($"Lamps in the heaviest setting ({drawing[0].Setting})"),
                            s_lamp.Table(drawing[0].Lamps.Where(l => l.Current.Amperes > 1e-6)),
                        },
                    s_everyLamp.Spreadsheet(drawing.SelectMany(p => p.Lamps.Select(l => (p, l)))),
                ],
            json => LoadJson.Write(json, report)
        );
    }
}
