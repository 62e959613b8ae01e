namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>check</c> gives: verdict first, then load, fuses, drops, charging and findings; <see
/// cref="CheckPage"/> lays its page out.</summary>
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

    public static Document Of(BikeReport report, ToleranceReport? tolerance = null, FusePlan? plan = null)
    {
        var page = new CheckPage(report, tolerance, plan);
        return new(
            CommonBlocks.TitleOf(report.Bike, "Check"),
            tolerance is null ? report.Headline : $"{report.Headline}\n{ToleranceDocument.Sureness(tolerance)}",
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
            Fields = CheckPage.Fields,
            Lead = () => [.. tolerance is null ? [] : ToleranceDocument.Odds(tolerance), CheckFigures.Of(report)],
            FirstSheet = page.FirstSheet,
            Page = page.Rest,
        };
    }

    private static IEnumerable<Block> Blocks(BikeReport report, ToleranceReport? tolerance, FusePlan? plan)
    {
        // A spreadsheet that asked for tolerances gets those.
        if (tolerance is not null)
            yield return ToleranceDocument.Spreadsheet(tolerance);
        foreach (Block block in Causes(report))
            yield return block;
        if (plan is not null)
            yield return new Paragraph($"Fuse plan, {FusePlanDocument.Remedy(plan)}");
        var legend = new SettingLegend();
        if (!report.Fuses.IsEmpty)
        {
            yield return new Heading("Fuses");
            yield return CommonBlocks.FuseTable(report.Fuses, legend);
            yield return ReportCharts.Fuses(report.Fuses);
        }

        yield return new Heading($"Lamps{CommonBlocks.At(report)}, each in its worst lasting setting");
        yield return legend.In(s_lamp.Table(report.WorstDrops));
        // CSV gives the verdict on the bike beside each lamp.
        yield return new Columns<VoltageDropBreakdown>
        {
            { "verdict", "verdict", _ => report.VerdictText },
            { s_lamp, d => d },
        }.Spreadsheet(report.WorstDrops);
        yield return legend.Block;
        yield return new Heading(
            $"Load in the heaviest setting ({report.Heaviest.Setting}): {Figures.Amperes(report.Heaviest.TotalCurrent)}"
        );
        yield return CircuitLoad.Columns.Table(CircuitLoad.Of(report.Heaviest));
        if (Charging(report) is { } charging)
        {
            yield return new Heading("Charging");
            yield return new Paragraph(charging);
            foreach (Block block in report.Engine is { } running ? EngineBlocks.Table(running, report.Bike) : [])
                yield return block;
        }

        foreach (Block block in tolerance is null ? [] : ToleranceDocument.Blocks(tolerance))
            yield return block;
        foreach (Block block in CommonBlocks.FindingBlocks(report.Findings))
            yield return block;
    }

    // Every cause with its remedy, and what is all right beside them.
    private static IEnumerable<Block> Causes(BikeReport report)
    {
        if (report.Causes.IsEmpty)
            yield break;
        yield return new Heading("Causes and remedies");
        yield return new WorkList(report.Causes);

        foreach (Block block in Beside(report))
            yield return block;
    }

    /// <summary>What suits beside the causes, and what is not judged.</summary>
    public static IEnumerable<Block> Beside(BikeReport report)
    {
        if (CheckHeadline.Suitable(report) is { Length: > 0 } suitable)
            yield return new Paragraph($"Suits: {suitable}.");
        if (!report.NotJudged.IsEmpty)
            yield return new Paragraph($"Not judged: {string.Join(" ", report.NotJudged)}");
    }

    /// <summary>What the charging covers, the usual ride first, in sentences; null without a charging list.</summary>
    public static string? Charging(BikeReport report)
    {
        if (report.Charging is not { Worst: { } worst } charging)
            return null;
        var sentences = new List<string>();
        if (charging.Typical is { } usual)
            sentences.Add(
                $"The usual ride's {Figures.Amperes(usual.Demand)} on average ('{usual.Setting}') are covered "
                    + $"{BreakEvenWords.Of(usual.BreakEven)}."
            );
        if (charging.Ride is { NetCharge: { } net } ride)
            sentences.Add(
                $"The ride of {ride.Duration.Minutes:0.#} min leaves {Figures.Number(net.AmpereHours, 2)} Ah net"
                    + (ride.FinalStateOfCharge is { } charge ? $", the battery at {Figures.Percent(charge)}." : ".")
            );
        if (worst != charging.Typical)
            sentences.Add(
                $"The greatest average load, {Figures.Amperes(worst.Demand)} in the setting '{worst.Setting}', is "
                    + $"covered {BreakEvenWords.Of(worst.BreakEven)}."
            );
        if (report.Engine is { } engine)
            sentences.Add(EngineBlocks.Sentences(engine));
        return string.Join(" ", sentences);
    }
}
