using Lighting.Calc.Charging;
using Lighting.Calc.Harness;
using Lighting.Calc.Network;
using Lighting.Calc.Tolerances;
using Lighting.Calc.Verdicts;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The page that <c>check</c> prints: verdict first, then load, fuses, drops, charging and findings.</summary>
internal static class CheckDocument
{
    private static readonly Columns<DropLedger> s_lamp = new()
    {
        { CommonBlocks.Lamp.Only("lamp", "voltageV", "currentA", "powerW", "relativeLight", "dropPercent"), d => d.Lamp },
        { "setting", "setting", d => d.Setting },
    };

    public static Document Of(BikeReport report, ToleranceReport? tolerance = null) => new(
        CommonBlocks.TitleOf(report.Bike, "Check"),
        Verdict(report),
        () => Blocks(report, tolerance),
        json => ReportJson.Write(json, report, tolerance));

    private static List<Block> Blocks(BikeReport report, ToleranceReport? tolerance)
    {
        var blocks = new List<Block>();
        // A spreadsheet that asked for tolerances gets those.
        if (tolerance is not null)
            blocks.Add(ToleranceDocument.Spreadsheet(tolerance));
        var legend = new SettingLegend();
        if (!report.Fuses.IsEmpty)
        {
            blocks.Add(new Heading("Fuses"));
            blocks.Add(CommonBlocks.FuseTable(report.Fuses, legend, isMain: false));
            blocks.Add(ReportCharts.Fuses(report.Fuses));
        }

        OperatingPoint heaviest = report.Heaviest;
        blocks.Add(new Heading($"Lamps at {Figures.Volts(report.SupplyVoltage)}, each in its worst setting"));
        blocks.Add(legend.In(s_lamp.Table(report.WorstDrops, isMain: true)));
        blocks.Add(legend.Block);
        blocks.Add(new PageOnly(new SideBySide([ReportCharts.LampVolts(report), ReportCharts.LampLight(report)])));
        if (report.Bike.HasNetwork && !report.WorstDrops.IsEmpty)
        {
            blocks.Add(new PageOnly(new Heading("Where the volts are lost, each lamp in its worst setting")));
            blocks.Add(new PageOnly(ReportCharts.Ledgers(report)));
            blocks.Add(new PageOnly(DropDocument.Ledgers(report).Table(report.WorstDrops.OrderByDescending(d => d.TotalDrop.Volts))));
        }

        blocks.Add(new Heading($"Load in the heaviest setting ({heaviest.Setting}): {Figures.Amperes(heaviest.TotalCurrent)}"));
        blocks.Add(CircuitLoad.Columns.Table(CircuitLoad.Of(heaviest)));
        if (Charging(report) is { } charging)
        {
            blocks.Add(new Heading("Charging"));
            blocks.Add(new Paragraph(charging));
            if (ChargingCharts.Balance(ChargingSystem.Of(report.Bike), report.Charging!) is { } balance)
                blocks.Add(new PageOnly(balance));
            if (report.Charging!.Ride is { } ride)
                blocks.AddRange(ChargingDocument.RideBlocks(ride).Select(b => b as PageOnly ?? new PageOnly(b)));
        }

        if (report.DirectLighting is { } direct && DirectLightingDocument.Chart(direct) is { } volts)
        {
            blocks.Add(new PageOnly(new Heading("Direct lighting")));
            blocks.Add(new PageOnly(volts));
        }

        if (tolerance is not null)
            blocks.AddRange(ToleranceDocument.Blocks(tolerance));
        blocks.AddRange(CommonBlocks.FindingBlocks(report.Findings));
        blocks.Add(new PageOnly(CircuitBlock.Of(report.Bike, heaviest)));
        blocks.Add(CommonBlocks.Safety);
        return blocks;
    }

    /// <summary>The verdict in plain words: what does not suit and the worst number of each kind.</summary>
    public static string Verdict(BikeReport report)
    {
        int faults = report.Findings.Count(f => f.Severity == Severity.Fault);
        string head = report.Suits ? "Suits." : faults == 0 ? "Does not suit." : $"Does not suit: {faults} {(faults == 1 ? "fault" : "faults")} below.";
        IEnumerable<string> parts = [head, .. report.Fuses.Select(f => f.Headline + ".")];
        if (report.WorstDrops.MaxBy(d => d.Lamp.Drop!.Value.DecimalFractions) is { } worst && report.Bike.HasNetwork)
            parts = parts.Append($"Worst drop: {worst.Lamp.Lamp.Lamp} gets {Figures.Volts(worst.Lamp.Voltage)}, {Figures.Percent(worst.Lamp.Drop!.Value)} lost.");
        if (report.Charging?.Worst is { } charging)
            parts = parts.Append($"Charging covers the load {BreakEvenWords.Of(charging.BreakEven)}.");
        if (report.DirectLighting is { } direct)
            parts = parts.Append($"Direct lighting: {DirectLightingDocument.Range(direct)}.");
        return string.Join("\n", parts);
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
