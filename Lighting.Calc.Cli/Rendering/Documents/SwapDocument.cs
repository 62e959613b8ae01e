using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>swap</c> gives: the verdict on the swapped bike, then each part before and after.</summary>
internal static class SwapDocument
{
    private static readonly Columns<UnclassedLamp> s_unclassed = new()
    {
        { "lamp", "lamp", u => u.Lamp.Lamp },
        { "why", "reason", u => u.Reason },
    };

    private static readonly Columns<Change<ChargingBalance>> s_charging = new()
    {
        { "setting", c => c.Before.Setting },
        { "load A", "demandA", c => c.Before.Demand, c => c.After.Demand },
        { "covered before", "", c => BreakEvenWords.Of(c.Before.BreakEven) },
        { "covered after", "", c => BreakEvenWords.Of(c.After.BreakEven) },
        { "setting", "", c => c.Before.Setting },
        { "breakEvenRpm", c => Rpm(c.Before.BreakEven), c => Rpm(c.After.BreakEven) },
    };

    private static readonly Columns<ExcessCurrentChange> s_surplus = new()
    {
        { "setting", s => s.Setting },
        { "rpm", s => s.After.Speed },
        { "netA", s => s.Before.Net, s => s.After.Net },
        { "intoFullBatteryA", s => s.Before.OverchargeCurrent, s => s.After.OverchargeCurrent },
        { "shuntHeatW", s => s.Before.ShuntHeat, s => s.After.ShuntHeat },
    };

    private static readonly Columns<SwapReport> s_chargingOf = new()
    {
        { "balances", s_charging, r => r.Charging },
        { "netAmpereHours", r => r.Before.Charging?.Ride?.NetCharge, r => r.After.Charging?.Ride?.NetCharge },
        { "surplus", s_surplus, r => r.Excess },
    };

    private static readonly Columns<Change<BatteryRunTime>> s_runTime = new()
    {
        { "setting", s => s.Before.Setting },
        { "toPercent", s => s.After.To },
        { "load A", "loadA", s => s.Before.Load, s => s.After.Load },
        { "to", "", s => Figures.Right($"{Figures.Number(s.After.To.Percent, 0)} %") },
        { "before", "", s => Figures.Right(ChargingDocument.Hours(s.Before)) },
        { "after", "", s => Figures.Right(ChargingDocument.Hours(s.After)) },
        { "setting", "", s => s.Before.Setting },
        { "timeS", s => s.Before.Time?.Seconds, s => s.After.Time?.Seconds },
    };

    private static readonly Columns<FlasherChange> s_flasher = new()
    {
        { "setting", f => f.Setting },
        { "nominalPowerW", f => f.NominalBefore, f => f.NominalAfter },
        { "flasherLoadW", f => f.FlasherLoad },
        { "loadSharePercent", f => f.Share },
    };

    private static readonly Columns<LampResistor> s_resistor = new()
    {
        { "lamp", "lamp", r => r.Lamp.Lamp },
        { "quantity", r => r.Lamp.Quantity },
        { "Ω each", "resistanceOhm", r => r.Resistor.Resistance },
        { "standard Ω", "preferredResistanceOhm", r => r.Resistor.PreferredResistance, "F1" },
        { "heat W", "heatW", r => r.HighestHeat },
        { "rated W", "ratingW", r => r.Rating, Figures.Rated },
    };

    private static readonly Columns<SneakFeed> s_sneak = new()
    {
        { "lamp", s => s.Glowing.Lamp.Lamp },
        { "setting", s => s.Setting },
        { "voltageV", s => s.Glowing.Voltage },
        { "currentA", s => s.Glowing.Current },
        { "through", s => s.Through?.Lamp.Lamp },
    };

    public static Document Of(SwapReport report, ImmutableArray<UnclassedLamp> unclassed) =>
        new(
            CommonBlocks.TitleOf(report.Before.Bike, "Swap"),
            Verdict(report),
            Cautions.OfWork(report.Before.Bike),
            () => Blocks(report, unclassed),
            json =>
            {
                json.Write("bike", report.Before.Bike.Name);
                json.Write("supplyVoltageV", report.After.SupplyVoltage);
                json.Write("verdict", report.VerdictText);
                json.Pair("totalCurrentA", report.Before.Heaviest.TotalCurrent, report.After.Heaviest.TotalCurrent);
                json.Write("lamps", ComparisonColumns.LampSeries, report.Comparison.Lamps);
                json.Write("unchanged", s_unclassed, unclassed);
                json.Write("circuits", ComparisonColumns.Circuit, report.Comparison.Circuits);
                json.Write("fuses", ComparisonColumns.Fuse, report.Comparison.Fuses);
                json.Pair(
                    "worstDropPercent",
                    report.Comparison.WorstDropBefore?.Lamp.Drop,
                    report.Comparison.WorstDropAfter?.Lamp.Drop
                );
                json.Write("charging", s_chargingOf, report);
                if (report.Before.Engine is { } was && report.After.Engine is { } now)
                {
                    json.Write("engineBefore", EngineBlocks.Speeds, was);
                    json.Write("engineAfter", EngineBlocks.Speeds, now);
                }

                json.Write("batteryRunTimes", s_runTime, report.Standing);
                json.Write("flasher", s_flasher, report.Flashers);
                json.Write("loadResistors", s_resistor, report.Resistors);
                json.Write("sneakFeeds", s_sneak, report.SneakFeeds);
                json.Write("findings", CommonBlocks.Finding, report.Findings);
            }
        )
        {
            Outcome = report.Verdict,
        };

    private static IEnumerable<Block> Blocks(SwapReport report, ImmutableArray<UnclassedLamp> unclassed)
    {
        var legend = new SettingLegend();
        yield return new Heading($"Lamps{CommonBlocks.At(report.After)}, before→after");
        yield return legend.In(
            ComparisonColumns
                .Lamp.Only("lamp", "voltageV", "currentA", "powerW", "light", "dropPercent", "setting")
                .Table(report.Comparison.Lamps.Where(l => l.Setting is not null))
        );
        yield return legend.Block;
        yield return ComparisonColumns.LampSeries.Spreadsheet(report.Comparison.Lamps);
        IEnumerable<Block> rest =
        [
            .. Under("Lamps not replaced", s_unclassed, unclassed),
            new Heading("Circuits, each in its heaviest setting"),
            ComparisonColumns.Circuit.Table(report.Comparison.Circuits),
            new PageOnly(() => [ReportCharts.Circuits(report)]),
            .. Under("Fuses", ComparisonColumns.Fuse, report.Comparison.Fuses),
            .. Under("Charging, average load", s_charging, report.Charging),
            .. !report.Charging.IsEmpty && Riding(report) is { } riding
                ? [new Paragraph(riding)]
                : Array.Empty<Block>(),
            .. EngineBlocks.Comparison(report.Before.Engine, report.After.Engine),
            .. Under("Battery run time, engine off, from full charge (Peukert)", s_runTime, report.Standing),
            .. Under(
                "Load resistors, if the flasher is kept: one in parallel with each lamp",
                s_resistor,
                report.Resistors
            ),
            .. CommonBlocks.FindingBlocks(report.Findings),
        ];
        foreach (Block block in rest)
            yield return block;
    }

    private static Block[] Under<T>(string heading, Columns<T> columns, ImmutableArray<T> rows) =>
        rows.IsEmpty ? [] : [new Heading(heading), columns.Table(rows)];

    private static string Verdict(SwapReport report)
    {
        int faults = report.Findings.Count(f => f.Severity == Severity.Fault);
        string head = report.Verdict switch
        {
            BikeVerdict.Suits => "The swapped bike suits.",
            BikeVerdict.NotJudged => $"The swapped bike is not judged: {string.Join(" ", report.After.NotJudged)}",
            _ => faults == 0
                ? "The swapped bike does not suit."
                : $"The swapped bike does not suit: {faults} {(faults == 1 ? "fault" : "faults")} below.",
        };
        IEnumerable<string> parts = [head, .. report.Comparison.Fuses.Select(f => f.After!.Headline + ".")];
        parts = parts.Append(
            $"Heaviest setting: {Figures.Amperes(report.Before.Heaviest.TotalCurrent)} before, "
                + $"{Figures.Amperes(report.After.Heaviest.TotalCurrent)} after."
        );
        if (
            report.Comparison is { WorstDropBefore: { } was, WorstDropAfter: { } now } && report.Before.Bike.HasNetwork
        )
            parts = parts.Append(
                $"Largest voltage drop: {Figures.Percent(was.Lamp.Drop!.Value)} before ({was.Lamp.Lamp.Lamp}), "
                    + $"{Figures.Percent(now.Lamp.Drop!.Value)} after ({now.Lamp.Lamp.Lamp})."
            );
        return string.Join("\n", parts);
    }

    private static string? Riding(SwapReport report)
    {
        var parts = new List<string>();
        if (report.Before.Charging?.Ride is { } was && report.After.Charging?.Ride is { } now)
            parts.Add(
                $"The ride of {Figures.Number(was.Duration.Minutes, 0)} min: {Net(was.NetCharge)} before, "
                    + $"{Net(now.NetCharge)} after."
            );
        if (report.Excess is { } surplus)
            parts.Add(
                $"Largest surplus current at {Figures.Rpm(surplus.After.Speed)} ({surplus.Setting}): "
                    + $"{Figures.Amperes(surplus.Before.Net!.Value)} before, "
                    + $"{Figures.Amperes(surplus.After.Net!.Value)} after"
                    + (surplus.After.ShuntHeat is { } heat ? $", {Figures.Watts(heat)} of heat in the regulator." : ".")
            );
        return parts.Count == 0 ? null : string.Join("\n", parts);
    }

    private static string Net(ElectricCharge? net) =>
        net is { } known ? $"{Figures.Number(known.AmpereHours, 2)} Ah net" : "net unknown";

    private static RotationalSpeed? Rpm(BreakEven breakEven) =>
        breakEven.Outcome == BreakEvenOutcome.At ? breakEven.Speed : null;
}
