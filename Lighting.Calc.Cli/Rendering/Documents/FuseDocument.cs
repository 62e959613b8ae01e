namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>fuse</c> gives: each fuse's verdict first, then the numbers behind it.</summary>
internal static class FuseDocument
{
    public static Document Of(BikeReport report, IReadOnlyCollection<Finding> findings) =>
        new(
            CommonBlocks.TitleOf(report.Bike, "Fuses"),
            CommonBlocks.Within(report.When, string.Join("\n", report.Fuses.Select(Headline))),
            Cautions.OfWork(report.Bike),
            () =>
            {
                var legend = new SettingLegend();
                return
                [
                    CommonBlocks.FuseTable(report.Fuses, legend),
                    CommonBlocks.Fuse.Spreadsheet(report.Fuses),
                    ReportCharts.Fuses(report.Fuses),
                    legend.Block,
                    .. CommonBlocks.RatedAs(report.Bike),
                    .. report.Fuses.SelectMany(Details),
                    .. CommonBlocks.FindingBlocks(findings),
                ];
            },
            json =>
            {
                json.Write("bike", report.Bike.Name);
                json.Write("supplyVoltageV", report.SupplyVoltage);
                json.Write("fuses", CommonBlocks.Fuse, report.Fuses);
                json.Write("findings", CommonBlocks.Finding, findings);
            }
        )
        {
            Outcome =
                report.Fuses.All(f => f.Verdict == FuseVerdict.Suits) ? BikeVerdict.Suits
                : report.Fuses.Any(f => f.Verdict is not (FuseVerdict.Suits or FuseVerdict.NotJudged))
                    ? BikeVerdict.DoesNotSuit
                : BikeVerdict.NotJudged,
        };

    // The figures of the settings stand in the table: here the verdict, the cause and the remedy.
    private static string Headline(FuseSuitability fuse)
    {
        ContinuousLoad load = fuse.Steady;
        VerdictCause[] causes = [.. VerdictCauses.Of(fuse)];
        return causes.Length > 0
                ? string.Join(" ", causes.Select(c => c.Text).Append(causes[0].Remedy).OfType<string>())
            : fuse.Verdict == FuseVerdict.Suits
                ? $"{Figures.Rating(fuse.Fuse.Rating)} {fuse.Fuse.Name}: suits. "
                    + $"{Figures.Amperes(load.ContinuousCurrent)} continuous (limit {Limit(load.UsableCurrent)}), "
                    + $"{Figures.Amperes(load.WorstCurrent)} peak ({Peak(load)})."
            : fuse.Headline + ".";

        // A moment above the rating is held where a published time says so.
        static string Peak(ContinuousLoad load) =>
            load is { PeakExceedsRating: true, PeakHeldFor: { } held }
                ? $"above its rating, held for {OpeningTime.Text(held.Seconds)} or more"
                : $"limit {Limit(load.PeakLimit)}";

        static string Limit(UnitsNet.ElectricCurrent current) =>
            current.Amperes.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture);
    }

    private static IEnumerable<Block> Details(FuseSuitability fuse)
    {
        yield return new Heading($"{Figures.Rating(fuse.Fuse.Rating)} {fuse.Fuse.Name}");
        foreach (string reason in fuse.Reasons)
            yield return new Paragraph(Figures.Sentence(reason));
        yield return new Paragraph(Figures.Sentence(fuse.Advice.Explanation));
        if (!fuse.Steady.MomentaryLoads.IsEmpty)
            yield return new Paragraph($"Taken as momentary: {string.Join(", ", fuse.Steady.MomentaryLoads)}.");
        if (fuse.InrushCheck is { } on)
            yield return new Paragraph($"Inrush: {on.Explanation}.");
        if (!fuse.Clearing.IsEmpty)
            yield return Shorts(fuse).Table(fuse.Clearing);
    }

    private static Columns<ShortCircuitCheck> Shorts(FuseSuitability fuse) =>
        new()
        {
            { "short at end of", "run", c => c.Run.Name },
            {
                "prospective A",
                "prospectiveCurrentA",
                c => c.ProspectiveCurrent is { } amperes ? Figures.Cell(amperes.Amperes, 0) : Figures.Right("no limit")
            },
            {
                "opens within s",
                "opening",
                c => c.Opening is { } band && c.Clears is not null ? OpeningWords.Of(band) : "-"
            },
            { "clears", "clears", c => c.Clears },
            {
                "wire rated A",
                "wireRatingA",
                c => fuse.Protection.DownstreamRuns.FirstOrDefault(r => r.Run.Name == c.Run.Name)?.Rating.Alone,
                Figures.Rated
            },
        };
}
