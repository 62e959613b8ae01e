
namespace Lighting.Calc.Cli.Rendering;

/// <summary>The page that <c>check</c> prints: verdict first, then load, fuses, drops, charging and findings.</summary>
internal static class CheckDocument
{
    private static readonly Columns<VoltageDropBreakdown> s_lamp = new()
    {
        { CommonBlocks.Lamp.Only("lamp", "voltageV", "currentA", "powerW", "relativeLight", "dropPercent"), d => d.Lamp },
        { "setting", "setting", d => d.Setting },
    };

    public static Document Of(BikeReport report, ToleranceReport? tolerance = null) => new(
        CommonBlocks.TitleOf(report.Bike, "Check"),
        Verdict(report),
        () => Blocks(report, tolerance),
        json => ReportJson.Write(json, report, tolerance));

    private static IEnumerable<Block> Blocks(BikeReport report, ToleranceReport? tolerance)
    {
        // A spreadsheet that asked for tolerances gets those.
        if (tolerance is not null)
            yield return ToleranceDocument.Spreadsheet(tolerance);
        var legend = new SettingLegend();
        if (!report.Fuses.IsEmpty)
        {
            yield return new Heading("Fuses");
            yield return CommonBlocks.FuseTable(report.Fuses, legend, isMain: false);
            yield return ReportCharts.Fuses(report.Fuses);
        }

        yield return new Heading($"Lamps at {Figures.Volts(report.SupplyVoltage)}, each in its worst setting");
        yield return legend.In(s_lamp.Table(report.WorstDrops, isMain: true));
        yield return legend.Block;
        yield return new PageOnly(() => [new SideBySide([ReportCharts.LampVolts(report), ReportCharts.LampLight(report)]), .. Losses(report)]);
        yield return new Heading($"Load in the heaviest setting ({report.Heaviest.Setting}): {Figures.Amperes(report.Heaviest.TotalCurrent)}");
        yield return CircuitLoad.Columns.Table(CircuitLoad.Of(report.Heaviest));
        if (Charging(report) is { } charging)
        {
            yield return new Heading("Charging");
            yield return new Paragraph(charging);
        }

        yield return new PageOnly(() => Engine(report));
        foreach (Block block in tolerance is null ? [] : ToleranceDocument.Blocks(tolerance))
            yield return block;
        foreach (Block block in CommonBlocks.FindingBlocks(report.Findings))
            yield return block;
        yield return new PageOnly(() => [CircuitBlock.Of(report.Bike, report.Heaviest)]);
        yield return CommonBlocks.Safety;
    }

    private static IEnumerable<Block> Losses(BikeReport report) => !report.Bike.HasNetwork || report.WorstDrops.IsEmpty ? [] :
    [
        new Heading("Where the volts are lost, each lamp in its worst setting"),
        ReportCharts.Ledgers(report),
        DropDocument.Ledgers(report).Table(report.WorstDrops.OrderByDescending(d => d.TotalDrop.Volts)),
    ];

    // What hangs on the speed of the engine.
    private static IEnumerable<Block?> Engine(BikeReport report) =>
    [
        .. report.Charging is { Worst: not null } charging ? [ChargingCharts.Balance(ChargingSystem.Of(report.Bike), charging)] : Array.Empty<Block?>(),
        .. report.Charging is { Worst: not null, Ride: { } ride } ? PageOnly.Shown(ChargingDocument.RideBlocks(ride)) : [],
        .. report.DirectLighting is { } direct && DirectLightingDocument.Chart(direct) is { } volts ? [new Heading("Direct lighting"), volts] : Array.Empty<Block>(),
    ];

    /// <summary>The verdict in plain words: what does not suit and the worst number of each kind.</summary>
    public static string Verdict(BikeReport report)
    {
        IEnumerable<string> parts = [Head(report), .. report.Fuses.Select(f => f.Headline + ".")];
        if (report.Bike.CountsAllLampsTogether)
            parts = parts.Append("No 'lit when' is listed, so every lamp counts as on. Say which switch lights which lamp.");
        if (report.WorstDrops.MaxBy(d => d.Lamp.Drop!.Value.DecimalFractions) is { } worst && report.Bike.HasNetwork)
            parts = parts.Append($"Worst drop: {worst.Lamp.Lamp.Lamp} gets {Figures.Volts(worst.Lamp.Voltage)}, {Figures.Percent(worst.Lamp.Drop!.Value)} lost.");
        if (report.Charging?.Worst is { } charging)
            parts = parts.Append($"Charging covers the load {BreakEvenWords.Of(charging.BreakEven)}.");
        if (report.DirectLighting is { } direct)
            parts = parts.Append($"Direct lighting: {DirectLightingDocument.Range(direct)}.");
        return string.Join("\n", parts);
    }

    private static string Head(BikeReport report)
    {
        int faults = report.Findings.Count(f => f.Severity == Severity.Fault);
        switch (report.Verdict)
        {
            case BikeVerdict.DoesNotSuit:
                return faults == 0 ? "Does not suit." : $"Does not suit: {faults} {(faults == 1 ? "fault" : "faults")} below.";
            case BikeVerdict.NotJudged:
                string remedy = report.Fuses.IsEmpty && report.Bike is { Lighting: LightingSupply.Battery } ? " Give the fuse with --fuse 15A or in fuses.csv." : "";
                return $"Not judged: {string.Join(" Not judged: ", report.NotJudged)}{remedy}";
            default:
                string[] missing = [.. report.Bike.HasNetwork ? Array.Empty<string>() : ["wires", "voltage drop"], .. report.Bike.Charging.IsEmpty ? ["charging"] : Array.Empty<string>()];
                return missing.Length == 0 ? "Suits." : $"Suits, as far as listed. Not listed and not judged: {string.Join(", ", missing)}.";
        }
    }

    private static string? Charging(BikeReport report)
    {
        if (report.Charging is not { Worst: { } balance })
            return null;
        string text = $"The greatest average load, {Figures.Amperes(balance.Demand)} in the setting '{balance.Setting}', is covered {BreakEvenWords.Of(balance.BreakEven)}.";
        if (report.Charging.Ride is { NetCharge: { } net } ride)
            text += $" The ride of {ride.Duration.Minutes:0.#} min leaves {Figures.Number(net.AmpereHours, 2)} Ah net"
                + (ride.FinalStateOfCharge is { } charge ? $", the battery at {Figures.Percent(charge)}." : ".");
        return text;
    }
}
