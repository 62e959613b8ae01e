using System.Globalization;
using Lighting.Calc.Tolerances;
using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The part of <c>check</c> that says how sure its answers are.</summary>
internal static class ToleranceDocument
{
    private const string Unknown = "-";

    /// <summary>Every result and its percentiles, one row each.</summary>
    public static Block Spreadsheet(ToleranceReport report) => new SpreadsheetOnly(Everything(report));

    public static IEnumerable<Block> Blocks(ToleranceReport report)
    {
        yield return new Heading($"Tolerance: {report.Samples.ToString(CultureInfo.InvariantCulture)} bikes drawn within the spreads of their parts (seed {report.Seed.ToString(CultureInfo.InvariantCulture)})");
        yield return new Paragraph("5 and 95 in a hundred bikes lie at or under the outer figures. Lamps and fuses each in their worst setting.");
        yield return Lamps(report);
        if (report.Bike.HasNetwork)
            yield return Drops(report);
        yield return Others(report);
        VerdictTolerance[] unsure = [.. report.Verdicts.Where(v => v.Probability.DecimalFractions < 1)];
        if (unsure.Length > 0)
            yield return new Table(
                [new("about", "subject"), new("verdict", "verdict"), new("holds on %", "probabilityPercent", true)],
                [.. unsure.Select(v => (IReadOnlyList<Cell>)[v.Subject, v.Verdict, Odds(v.Probability)])]);
        string certain = unsure.Length == 0 ? "Every verdict holds on every bike drawn." : unsure.Length < report.Verdicts.Length ? "Every other verdict holds on every bike drawn." : "";
        yield return new Paragraph($"{certain} The spreads and their sources: lighting-calc tables tolerances.".Trim());
    }

    private static Table Lamps(ToleranceReport report) => new(
        [
            new("lamp", "lamp"), new("V: 5 %", "p5", true), new("middle", "p50", true), new("95 %", "p95", true),
            new("light: 5 %", "lightP5", true), new("middle", "lightP50", true), new("95 %", "lightP95", true),
        ],
        [
            .. report.Lamps.Select(l => (IReadOnlyList<Cell>)
            [
                l.Lamp.Lamp, Of(l.Voltage.Percentile5, v => v.Volts, 2), Of(l.Voltage.Median, v => v.Volts, 2), Of(l.Voltage.Percentile95, v => v.Volts, 2),
                Of(l.RelativeLight?.Percentile5, v => v.Percent, 0), Of(l.RelativeLight?.Median, v => v.Percent, 0), Of(l.RelativeLight?.Percentile95, v => v.Percent, 0),
            ]),
        ]);

    private static Table Drops(ToleranceReport report) => new(
        [new("lamp", "lamp"), new("drop %: 5 %", "p5", true), new("middle", "p50", true), new("95 %", "p95", true), new("drop mostly by", "mattersMost")],
        [
            .. report.Lamps.Select(l => (IReadOnlyList<Cell>)
            [
                l.Lamp.Lamp, Of(l.Drop.Percentile5, v => v.Percent, 1), Of(l.Drop.Median, v => v.Percent, 1), Of(l.Drop.Percentile95, v => v.Percent, 1), Most(l.Drop.MattersMost),
            ]),
        ]);

    private static Table Others(ToleranceReport report)
    {
        var rows = new List<IReadOnlyList<Cell>>();
        foreach (FuseTolerance fuse in report.Fuses)
            Add($"{fuse.Fuse.Name}, A", fuse.Current, c => c.Amperes, 2);
        if (report.BreakEven is { } even)
            Add("load covered from, rpm", even, r => r.RevolutionsPerMinute, 0);
        if (report.RideBalance is { } ride)
            Add("ride, Ah net", ride, c => c.AmpereHours, 2);
        return new Table(
            [new("result", "result"), new("5 %", "p5", true), new("middle", "p50", true), new("95 %", "p95", true), new("mostly by", "mattersMost")],
            rows);

        void Add<T>(string name, ResultSpread<T> spread, Func<T, double> number, int decimals)
            where T : struct, IQuantity
            => rows.Add([name, Of(spread.Percentile5, number, decimals), Of(spread.Median, number, decimals), Of(spread.Percentile95, number, decimals), Most(spread.MattersMost)]);
    }

    // One row a result, for a spreadsheet.
    private static Table Everything(ToleranceReport report)
    {
        var rows = new List<IReadOnlyList<Cell>>();
        foreach (LampTolerance lamp in report.Lamps)
        {
            Add(lamp.Lamp.Lamp, "voltageV", lamp.Voltage, v => v.Volts);
            Add(lamp.Lamp.Lamp, "dropPercent", lamp.Drop, v => v.Percent);
            if (lamp.RelativeLight is { } light)
                Add(lamp.Lamp.Lamp, "relativeLight", light, v => v.DecimalFractions);
        }

        foreach (FuseTolerance fuse in report.Fuses)
            Add(fuse.Fuse.Name, "currentA", fuse.Current, v => v.Amperes);
        if (report.BreakEven is { } even)
            Add("charging", "breakEvenRpm", even, v => v.RevolutionsPerMinute);
        if (report.RideBalance is { } ride)
            Add("ride", "netAmpereHours", ride, v => v.AmpereHours);
        return new Table(
            [
                new("about", "subject"), new("result", "result"), new("listed", "listed", true), new("5 %", "p5", true), new("middle", "p50", true), new("95 %", "p95", true),
                new("mostly by", "mattersMost"), new("share", "share", true),
            ],
            rows,
            IsMain: true);

        void Add<T>(string subject, string result, ResultSpread<T> spread, Func<T, double> number)
            where T : struct, IQuantity
            => rows.Add(
            [
                subject, result, Of(spread.Listed, number, 3), Of(spread.Percentile5, number, 3), Of(spread.Median, number, 3), Of(spread.Percentile95, number, 3),
                spread.MattersMost?.Part.Name ?? "", Of(spread.MattersMost?.Share, s => s.DecimalFractions, 3),
            ]);
    }

    private static Cell Of<T>(T? value, Func<T, double> number, int decimals)
        where T : struct
        => value is { } known ? Figures.Cell(number(known), decimals) : new Cell(Unknown, "");

    private static Cell Most(VarianceShare? share) => share is null ? Unknown : $"{share.Part.Name} ({Figures.Number(share.Share.Percent, 0)} %)";

    // Rounded towards the doubt: only what held on every bike is printed as 100.
    private static Cell Odds(Ratio odds) =>
        new(Figures.Number(odds.Percent is > 99.9 and < 100 ? 99.9 : odds.Percent is > 0 and < 0.1 ? 0.1 : odds.Percent, 1), "", odds.Percent);
}
