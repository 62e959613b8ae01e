namespace Lighting.Calc.Cli.Rendering;

/// <summary>The page that <c>check</c> prints: verdict first, then load, fuses, drops, charging and findings.</summary>
internal static class CheckDocument
{
    private static readonly Columns<VoltageDropBreakdown> s_lamp = new()
    {
        {
            CommonBlocks.Lamp.Only("lamp", "voltageV", "currentA", "powerW", "relativeLight", "dropPercent"),
            d => d.Lamp
        },
        { "supply V", "supplyVoltageV", d => d.SupplyVoltage },
        { "setting", "setting", d => d.Setting },
    };

    public static Document Of(BikeReport report, ToleranceReport? tolerance = null, FusePlan? plan = null) =>
        new(
            CommonBlocks.TitleOf(report.Bike, "Check"),
            report.Headline,
            Cautions.OfWork(report.Bike),
            () => Blocks(report, tolerance, plan),
            json =>
            {
                BikeReportWriter.WriteMembers(report, json);
                if (tolerance is not null)
                    ToleranceDocument.Write(json, tolerance);
                if (plan is not null)
                {
                    json.WriteStartObject("fusePlan");
                    FusePlanDocument.Write(json, plan);
                    json.WriteEndObject();
                }
            }
        )
        {
            Outcome = report.Verdict,
            Fields = CheckFirstPage.Fields,
            Lead = () => CheckFirstPage.Of(report),
        };

    private static IEnumerable<Block> Blocks(BikeReport report, ToleranceReport? tolerance, FusePlan? plan)
    {
        // A spreadsheet that asked for tolerances gets those.
        if (tolerance is not null)
            yield return ToleranceDocument.Spreadsheet(tolerance);
        foreach (Block block in Causes(report))
            yield return block;
        if (plan is not null)
            yield return new Paragraph($"Fuse plan, {FusePlanDocument.Remedy(plan)}");
        // What is asked most stands on the first sheet.
        yield return new PageOnly(() =>
            [report.Engine is { } engine ? EngineBlocks.LightChart(engine, report.Bike) : null]
        );
        var legend = new SettingLegend();
        if (!report.Fuses.IsEmpty)
        {
            yield return new Heading("Fuses");
            yield return CommonBlocks.FuseTable(report.Fuses, legend);
            yield return ReportCharts.Fuses(report.Fuses);
        }

        yield return new Heading($"Lamps{CommonBlocks.At(report)}, each in its worst setting");
        yield return legend.In(s_lamp.Table(report.WorstDrops));
        // CSV gives the verdict on the bike beside each lamp.
        yield return new Columns<VoltageDropBreakdown>
        {
            { "verdict", "verdict", _ => report.VerdictText },
            { s_lamp, d => d },
        }.Spreadsheet(report.WorstDrops);
        yield return legend.Block;
        yield return new PageOnly(() =>
            [new SideBySide([ReportCharts.LampVolts(report), ReportCharts.LampLight(report)]), .. Losses(report)]
        );
        yield return new Heading(
            $"Load in the heaviest setting ({report.Heaviest.Setting}): {Figures.Amperes(report.Heaviest.TotalCurrent)}"
        );
        yield return CircuitLoad.Columns.Table(CircuitLoad.Of(report.Heaviest));
        if (Charging(report) is { } charging)
        {
            yield return new Heading("Charging");
            yield return new Paragraph(charging);
            foreach (Block block in report.Engine is { } running ? EngineBlocks.Table(running) : [])
                yield return block;
        }

        yield return new PageOnly(() => Engine(report));
        foreach (Block block in tolerance is null ? [] : ToleranceDocument.Blocks(tolerance))
            yield return block;
        foreach (Block block in CommonBlocks.FindingBlocks(report.Findings))
            yield return block;
        yield return new PageOnly(() => [CircuitBlock.Of(report.Bike, report.Heaviest)]);
    }

    private static IEnumerable<Block> Losses(BikeReport report) =>
        !report.Bike.HasNetwork || report.WorstDrops.IsEmpty
            ? []
            :
            [
                new Heading("Voltage-drop breakdown, each lamp in its worst setting"),
                ReportCharts.Breakdowns(report),
                DropDocument.Breakdowns(report).Table(report.WorstDrops.OrderByDescending(d => d.TotalDrop.Volts)),
            ];

    // What depends on engine speed.
    private static IEnumerable<Block?> Engine(BikeReport report) =>
        [
            .. report.Engine is { } engine
                ? [EngineBlocks.VoltageChart(engine), .. EngineBlocks.RegulatorTable(engine)]
                : Array.Empty<Block?>(),
            .. report.Charging is { Worst: not null } charging
                ? [ChargingCharts.Balance(ChargingSystem.Of(report.Bike), charging)]
                : Array.Empty<Block?>(),
            .. report.Charging is { Worst: not null, Ride: { } ride }
                ? PageOnly.Shown(ChargingDocument.RideBlocks(ride))
                : [],
            .. report.DirectLighting is { } direct && DirectLightingDocument.Chart(direct) is { } volts
                ? [new Heading("Direct lighting"), volts]
                : Array.Empty<Block>(),
        ];

    // Every cause with its remedy, and what is all right beside them.
    private static IEnumerable<Block> Causes(BikeReport report)
    {
        if (report.Causes.IsEmpty)
            yield break;
        yield return new Heading("Causes and remedies");
        yield return new WorkList(report.Causes);
        if (CheckHeadline.Suitable(report) is { Length: > 0 } suitable)
            yield return new Paragraph($"Suits: {suitable}.");
        if (!report.NotJudged.IsEmpty)
            yield return new Paragraph($"Not judged: {string.Join(" ", report.NotJudged)}");
    }

    private static string? Charging(BikeReport report)
    {
        if (report.Charging is not { Worst: { } balance })
            return null;
        string text =
            $"The greatest average load, {Figures.Amperes(balance.Demand)} in the setting '{balance.Setting}', is "
            + $"covered {BreakEvenWords.Of(balance.BreakEven)}.";
        if (report.Charging.Ride is { NetCharge: { } net } ride)
            text +=
                $" The ride of {ride.Duration.Minutes:0.#} min leaves {Figures.Number(net.AmpereHours, 2)} Ah net"
                + (ride.FinalStateOfCharge is { } charge ? $", the battery at {Figures.Percent(charge)}." : ".");
        return report.Engine is { } engine ? $"{text} {EngineBlocks.Sentences(engine)}" : text;
    }
}
