using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>compare</c> gives: two bikes, or one before and after a change, side by side.</summary>
internal static class CompareDocument
{
    private static readonly Columns<Row> s_row = new()
    {
        { "", "what", r => r.What },
        { "before", "before", r => r.Before },
        { "after", "after", r => r.After },
    };

    private static readonly Columns<ConvertedLoad> s_load = new()
    {
        { "load", "lamp", l => l.Before.Lamp },
        { "before", "before", l => NameOf(l.Before.Specification) },
        { "after", "after", l => NameOf(l.After.Specification) },
        { "from", "", l => l.IsListed ? "tables" : "same watts" },
        { "listed", l => l.IsListed },
    };

    private static readonly Columns<SystemConversion> s_conversion = new()
    {
        { "systemVoltageV", c => c.Before.SystemVoltage, c => c.Bike.SystemVoltage },
        { "speedFactor", c => c.SpeedFactor?.DecimalFractions },
        { "loads", s_load, c => c.Loads },
        { "findings", CommonBlocks.Finding, c => c.Findings },
    };

    private sealed record Row(string What, string Before, string After);

    public static Document Of(BikeComparison comparison, SystemConversion? conversion, string before, string after) =>
        new(
            $"Comparison: {before} → {after}",
            Verdict(comparison),
            Cautions.OfWork(comparison.After.Bike),
            () => Blocks(comparison, conversion),
            json =>
            {
                json.Pair("bike", before, after);
                json.Pair("supplyVoltageV", comparison.Before.SupplyVoltage, comparison.After.SupplyVoltage);
                json.Pair("verdict", comparison.Before.VerdictText, comparison.After.VerdictText);
                json.Pair(
                    "totalCurrentA",
                    comparison.Before.Heaviest.TotalCurrent,
                    comparison.After.Heaviest.TotalCurrent
                );
                json.Write("lamps", ComparisonColumns.Lamp, comparison.Lamps);
                json.Write("circuits", ComparisonColumns.Circuit, comparison.Circuits);
                json.Write("fuses", ComparisonColumns.Fuse, comparison.Fuses);
                json.Pair(
                    "worstDropPercent",
                    comparison.WorstDropBefore?.Lamp.Drop,
                    comparison.WorstDropAfter?.Lamp.Drop
                );
                json.Pair("breakEvenRpm", Rpm(comparison.Before), Rpm(comparison.After));
                json.Pair("netAmpereHours", Net(comparison.Before), Net(comparison.After));
                if (comparison.Before.Engine is { } was && comparison.After.Engine is { } now)
                {
                    json.Write("engineBefore", EngineBlocks.Speeds, was);
                    json.Write("engineAfter", EngineBlocks.Speeds, now);
                }

                json.Write("conversion", s_conversion, conversion);
                json.Write("findingsGained", CommonBlocks.Finding, comparison.FindingsGained);
                json.Write("findingsLost", CommonBlocks.Finding, comparison.FindingsLost);
            }
        )
        {
            Outcome = comparison.After.Verdict,
        };

    private static IEnumerable<Block> Blocks(BikeComparison comparison, SystemConversion? conversion)
    {
        var legend = new SettingLegend();
        BikeReport was = comparison.Before,
            now = comparison.After;
        yield return s_row.Table(Rows(comparison));
        if (conversion is not null)
        {
            yield return new Heading(
                $"Conversion from {Figures.Volts(conversion.Before.SystemVoltage)} to "
                    + Figures.Volts(conversion.Bike.SystemVoltage)
            );
            yield return s_load.Table(conversion.Loads);
            yield return CommonBlocks.Finding.Table(conversion.Findings);
        }

        if (!comparison.Fuses.IsEmpty)
        {
            yield return new Heading("Fuses");
            yield return ComparisonColumns.Fuse.Table(comparison.Fuses);
        }

        yield return new Heading(
            CommonBlocks.At(was) == CommonBlocks.At(now)
                ? $"Lamps{CommonBlocks.At(now)}, before→after; those in brackets are the same lamps"
                : $"Lamps{CommonBlocks.At(was)} before,{CommonBlocks.At(now).TrimStart(',')} after"
        );
        yield return legend.In(
            ComparisonColumns
                .Lamp.Only("lamp", "voltageV", "currentA", "powerW", "light", "dropPercent", "setting")
                .Table(comparison.Lamps.Where(l => l.Setting is not null))
        );
        yield return legend.Block;
        yield return ComparisonColumns.LampSeries.Spreadsheet(comparison.Lamps);
        yield return new Heading("Circuits, each in its heaviest setting");
        yield return ComparisonColumns.Circuit.Table(comparison.Circuits);
        foreach (Block block in EngineBlocks.Comparison(was.Engine, now.Engine))
            yield return block;
        yield return new Heading("Findings gained");
        yield return comparison.FindingsGained.IsEmpty
            ? new Paragraph("None.")
            : CommonBlocks.Finding.Table(comparison.FindingsGained);
        yield return new Heading("Findings lost");
        yield return comparison.FindingsLost.IsEmpty
            ? new Paragraph("None.")
            : CommonBlocks.Finding.Table(comparison.FindingsLost);
    }

    private static IEnumerable<Row> Rows(BikeComparison comparison)
    {
        BikeReport was = comparison.Before,
            now = comparison.After;
        yield return new Row("verdict", was.VerdictText, now.VerdictText);
        yield return new Row(
            "heaviest setting",
            Figures.Amperes(was.Heaviest.TotalCurrent),
            Figures.Amperes(now.Heaviest.TotalCurrent)
        );
        yield return new Row(
            "largest drop",
            Drop(was, comparison.WorstDropBefore),
            Drop(now, comparison.WorstDropAfter)
        );
        if (was.Charging?.Worst is not null || now.Charging?.Worst is not null)
            yield return new Row("load covered", Covered(was), Covered(now));
        if (Net(was) is not null || Net(now) is not null)
            yield return new Row("ride, net", NetText(was), NetText(now));
    }

    private static string NameOf(LampSpecification lamp) =>
        lamp.Code ?? $"{Figures.Watts(lamp.ReferencePower)} at {Figures.Volts(lamp.ReferenceVoltage)}";

    private static string Verdict(BikeComparison comparison)
    {
        string head = comparison.After.Verdict switch
        {
            BikeVerdict.Suits => "After: suits.",
            BikeVerdict.NotJudged => $"After: not judged: {string.Join(" ", comparison.After.NotJudged)}",
            _ => $"After: does not suit: {string.Join(" ", comparison.After.Causes.Take(2).Select(c => c.Text))}",
        };
        return $"{head} Before: {comparison.Before.VerdictText}.\n{Count(comparison.FindingsGained.Length)} gained, "
            + $"{comparison.FindingsLost.Length} lost.";
    }

    private static string Count(int findings) => findings == 1 ? "1 finding" : $"{findings} findings";

    private static string Drop(BikeReport report, VoltageDropBreakdown? worst) =>
        report.Bike.HasNetwork && worst is not null
            ? $"{Figures.Percent(worst.Lamp.Drop!.Value)} " + $"({worst.Lamp.Lamp.Lamp})"
            : "-";

    private static string Covered(BikeReport report) =>
        report.Charging?.Worst is { } worst ? BreakEvenWords.Of(worst.BreakEven) : "-";

    private static string NetText(BikeReport report) =>
        Net(report) is { } net ? $"{Figures.Number(net.AmpereHours, 2)} Ah" : "-";

    private static ElectricCharge? Net(BikeReport report) => report.Charging?.Ride?.NetCharge;

    private static RotationalSpeed? Rpm(BikeReport report) =>
        report.Charging?.Worst?.BreakEven is { Outcome: BreakEvenOutcome.At } known ? known.Speed : null;
}
