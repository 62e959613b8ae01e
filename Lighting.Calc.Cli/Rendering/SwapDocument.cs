using System.Collections.Immutable;
using Lighting.Calc.Charging;
using Lighting.Calc.Harness;
using Lighting.Calc.Swaps;
using Lighting.Calc.Verdicts;
using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>swap</c> prints: the verdict on the swapped bike, then each part before and after.</summary>
internal static class SwapDocument
{
    public static Document Of(SwapReport report, ImmutableArray<UnclassedLamp> unclassed)
    {
        var legend = new SettingLegend();
        var blocks = new List<Block> { new Heading($"Lamps at {Figures.Volts(report.After.SupplyVoltage)}, before→after"), Lamps(report, legend), legend.Block, new SpreadsheetOnly(LampSeries(report)) };
        if (!unclassed.IsEmpty)
        {
            blocks.Add(new Heading("Lamps that stay"));
            blocks.Add(new Table([new("lamp", "lamp"), new("why", "reason")], [.. unclassed.Select(u => (IReadOnlyList<Cell>)[u.Lamp.Lamp, u.Reason])]));
        }

        blocks.Add(new Heading("Circuits, each in its heaviest setting"));
        blocks.Add(Circuits(report));
        blocks.Add(new PageOnly(ReportCharts.Circuits(report)));
        if (!report.Fuses.IsEmpty)
        {
            blocks.Add(new Heading("Fuses"));
            blocks.Add(Fuses(report));
        }

        if (!report.Charging.IsEmpty)
        {
            blocks.Add(new Heading("Charging, average load by duty"));
            blocks.Add(Charging(report));
            if (Riding(report) is { } riding)
                blocks.Add(new Paragraph(riding));
        }

        if (!report.Standing.IsEmpty)
        {
            blocks.Add(new Heading("Standing with the engine off, from a full battery (Peukert)"));
            blocks.Add(Standing(report));
        }

        if (!report.Resistors.IsEmpty)
        {
            blocks.Add(new Heading("Load resistors, if the flasher stays: one beside each lamp"));
            blocks.Add(Resistors(report));
        }

        blocks.AddRange(CommonBlocks.FindingBlocks(report.Findings));
        blocks.Add(CommonBlocks.Safety);
        return new Document(CommonBlocks.TitleOf(report.Before.Bike, "Swap"), Verdict(report), blocks);
    }

    private static string Verdict(SwapReport report)
    {
        int faults = report.Findings.Count(f => f.Severity == Severity.Fault);
        string head = report.Verdict switch
        {
            BikeVerdict.Suits => "The swapped bike suits.",
            BikeVerdict.NotJudged => $"The swapped bike is not judged: {string.Join(" ", report.After.NotJudged)}",
            _ => faults == 0 ? "The swapped bike does not suit." : $"The swapped bike does not suit: {faults} {(faults == 1 ? "fault" : "faults")} below.",
        };
        IEnumerable<string> parts = [head, .. report.Fuses.Select(f => f.After.Headline + ".")];
        parts = parts.Append($"Heaviest setting: {Figures.Amperes(report.Before.Heaviest.TotalCurrent)} before, {Figures.Amperes(report.After.Heaviest.TotalCurrent)} after.");
        if (report.WorstDropBefore is { } was && report.WorstDropAfter is { } now && report.Before.Bike.HasNetwork)
            parts = parts.Append($"Worst drop: {Figures.Percent(was.Lamp.Drop!.Value)} before ({was.Lamp.Lamp.Lamp}), {Figures.Percent(now.Lamp.Drop!.Value)} after ({now.Lamp.Lamp.Lamp}).");
        return string.Join("\n", parts);
    }

    private static Table Lamps(SwapReport report, SettingLegend legend) => new(
        [new("lamp", "lamp"), new("volts", "volts", true), new("amps", "amps", true), new("watts", "watts", true), new("light %", "light", true), new("drop %", "drop", true), new("setting", "setting")],
        [
            .. report.Lamps.Where(l => l.Setting is not null).Select(l => (IReadOnlyList<Cell>)
            [
                l.IsReplaced ? l.Lamp.Lamp : $"({l.Lamp.Lamp})", Pair(l.Before!.Voltage.Volts, l.After!.Voltage.Volts, 2), Pair(l.Before.Current.Amperes, l.After.Current.Amperes, 2),
                Pair((double)l.Before.Power.Watts, (double)l.After.Power.Watts, 1), Light(l), Pair(l.Before.Drop?.Percent, l.After.Drop?.Percent, 1), legend.Of(l.Setting!),
            ]),
        ]);

    private static Table LampSeries(SwapReport report) => new(
        [
            new("lamp", "lamp"), new("circuit", "circuit"), new("quantity", "quantity", true), new("replaced", "replaced"), new("setting", "setting"), new("", "voltageBeforeV", true), new("", "voltageAfterV", true),
            new("", "currentBeforeA", true), new("", "currentAfterA", true), new("", "powerBeforeW", true), new("", "powerAfterW", true),
            new("", "relativeLightBefore", true), new("", "relativeLightAfter", true), new("", "lightBeforeLm", true), new("", "lightAfterLm", true), new("", "dropBeforePercent", true), new("", "dropAfterPercent", true),
        ],
        [
            .. report.Lamps.Select(l => (IReadOnlyList<Cell>)
            [
                l.Lamp.Lamp, l.Lamp.Circuit, Figures.Cell(l.Lamp.Quantity, 0), l.IsReplaced ? "yes" : "no", l.Setting?.ToString() ?? "", Number(l.Before?.Voltage.Volts), Number(l.After?.Voltage.Volts),
                Number(l.Before?.Current.Amperes), Number(l.After?.Current.Amperes), Number((double?)l.Before?.Power.Watts), Number((double?)l.After?.Power.Watts),
                Number(l.Before?.RelativeLight?.DecimalFractions), Number(l.After?.RelativeLight?.DecimalFractions), Number(l.LightBefore?.Lumens), Number(l.LightAfter?.Lumens), Number(l.Before?.Drop?.Percent), Number(l.After?.Drop?.Percent),
            ]),
        ],
        IsMain: true);

    private static Table Circuits(SwapReport report) => new(
        [new("circuit", "circuit"), new("amps", "currentA", true), new("watts", "powerW", true)],
        [
            .. report.Circuits.Select(c => (IReadOnlyList<Cell>)
                [c.Circuit, Pair(c.CurrentBefore.Amperes, c.CurrentAfter.Amperes, 2), Pair((double)c.PowerBefore.Watts, (double)c.PowerAfter.Watts, 1)]),
        ]);

    private static Table Fuses(SwapReport report) => new(
        [new("fuse", "fuse"), new("rating A", "ratingA", true), new("worst A", "worstCurrentA", true), new("before", "verdictBefore"), new("after", "verdictAfter"), new("smallest A", "smallestRatingA", true), new("largest A", "largestRatingA", true)],
        [
            .. report.Fuses.Select(f => (IReadOnlyList<Cell>)
            [
                f.After.Fuse.Name, CommonBlocks.Rating(f.After.Fuse.Rating.Amperes), Pair(f.Before.Steady.WorstCurrent.Amperes, f.After.Steady.WorstCurrent.Amperes, 2),
                f.Before.VerdictText, f.After.VerdictText, CommonBlocks.Rating(f.After.Advice.Smallest?.Amperes), CommonBlocks.Rating(f.After.Advice.Largest?.Amperes),
            ]),
        ]);

    private static Table Charging(SwapReport report) => new(
        [new("load A", "loadA", true), new("covered before", "before"), new("covered after", "after"), new("setting", "setting")],
        [
            .. report.Charging.Select(c => (IReadOnlyList<Cell>)
                [Pair(c.Before.Demand.Amperes, c.After.Demand.Amperes, 2), BreakEvenWords.Of(c.Before.BreakEven), BreakEvenWords.Of(c.After.BreakEven), c.Setting.ToString()]),
        ]);

    private static string? Riding(SwapReport report)
    {
        var parts = new List<string>();
        if (report.RideBefore is { } was && report.RideAfter is { } now)
            parts.Add($"The ride of {Figures.Number(was.Duration.Minutes, 0)} min: {Net(was.NetCharge)} before, {Net(now.NetCharge)} after.");
        if (report.Surplus is { } surplus)
            parts.Add($"Most is over at {Figures.Rpm(surplus.After.Speed)} ({surplus.Setting}): {Figures.Amperes(surplus.Before.Net!.Value)} before, {Figures.Amperes(surplus.After.Net!.Value)} after{(surplus.After.ShuntHeat is { } heat ? $", {Figures.Watts(heat)} of heat in the regulator" : "")}.");
        return parts.Count == 0 ? null : string.Join("\n", parts);
    }

    private static Table Standing(SwapReport report) => new(
        [new("load A", "loadA", true), new("to", "toPercent", true), new("before", "before", true), new("after", "after", true), new("setting", "setting")],
        [
            .. report.Standing.Select(s => (IReadOnlyList<Cell>)
                [Pair(s.Before.Load.Amperes, s.After.Load.Amperes, 2), $"{Figures.Number(s.After.To.Percent, 0)} %", Hours(s.Before), Hours(s.After), s.Setting.ToString()]),
        ]);

    private static Table Resistors(SwapReport report) => new(
        [new("lamp", "lamp"), new("each ohms", "resistanceOhm", true), new("standard", "preferredOhm", true), new("lit W", "heatW", true), new("rating W", "ratingW", true)],
        [
            .. report.Resistors.Select(r => (IReadOnlyList<Cell>)
            [
                r.Lamp.Lamp, Figures.Cell(r.Resistor.Resistance.Ohms, 2), Figures.Cell(r.Resistor.PreferredResistance.Ohms, 1), Figures.Cell(r.HighestHeat), CommonBlocks.Rating((double?)r.Rating?.Watts),
            ]),
        ]);

    private static string Net(ElectricCharge? net) => net is { } known ? $"{Figures.Number(known.AmpereHours, 2)} Ah net" : "net not known";

    private static string Hours(StandingTime standing) => standing.Outcome switch
    {
        StandingOutcome.Reached => $"{Figures.Number(standing.Time!.Value.Hours, 1)} h",
        StandingOutcome.AlreadyThere => "there already",
        StandingOutcome.NoLoad => "never",
        StandingOutcome.CapacityNotKnown => "capacity not listed",
        _ => throw new InvalidOperationException($"Unknown outcome {standing.Outcome}."),
    };

    private static Cell Light(LampChange change) => change.LightBefore is { } was && change.LightAfter is { } now
        ? $"{Figures.Number(was.Lumens, 0)}→{Figures.Number(now.Lumens, 0)} lm"
        : change.Before!.RelativeLight is null && change.After!.RelativeLight is null
            ? "-"
            : $"{Percent(change.Before.RelativeLight)}→{Percent(change.After!.RelativeLight)}";

    private static string Percent(Ratio? light) => light is { } known ? Figures.Number(known.Percent, 0) : "-";

    private static Cell Pair(double? before, double? after, int decimals) =>
        $"{(before is { } was ? Figures.Number(was, decimals) : "-")}→{(after is { } now ? Figures.Number(now, decimals) : "-")}";

    private static Cell Number(double? value) => value is { } known ? new Cell(Figures.Number(known, 3), "", known) : new Cell("-", "");
}
