using Lighting.Calc.Fuses;
using Lighting.Calc.Harness;
using Lighting.Calc.Verdicts;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>fuse</c> prints: each fuse's verdict first, then the numbers behind it.</summary>
internal static class FuseDocument
{
    public static Document Of(BikeReport report, IReadOnlyCollection<Finding> findings)
    {
        var legend = new SettingLegend();
        return new Document(
            CommonBlocks.TitleOf(report.Bike, "Fuses"),
            string.Join("\n", report.Fuses.Select(f => f.Headline + ".")),
            [
                CommonBlocks.FuseTable(report.Fuses, legend, isMain: true),
                ReportCharts.Fuses(report.Fuses),
                legend.Block,
                .. report.Fuses.SelectMany(Details),
                .. CommonBlocks.FindingBlocks(findings),
                CommonBlocks.Safety,
            ]);
    }

    private static IEnumerable<Block> Details(FuseSuitability fuse)
    {
        yield return new Heading($"{Figures.Rating(fuse.Fuse.Rating)} {fuse.Fuse.Name}");
        foreach (string reason in fuse.Reasons)
            yield return new Paragraph(Figures.Sentence(reason));
        yield return new Paragraph(Figures.Sentence(fuse.Advice.Explanation));
        if (fuse.SwitchingOn is { } on)
            yield return new Paragraph($"Switching on: {on.Explanation}.");
        if (!fuse.Clearing.IsEmpty)
            yield return Shorts(fuse);
    }

    private static Table Shorts(FuseSuitability fuse) => new(
        [new("dead short at the end of", "run"), new("short A", "prospectiveCurrentA", true), new("opens within s", "opening"), new("clears", "clears"), new("wire carries A", "wireRatingA", true)],
        [
            .. fuse.Clearing.Select(c => (IReadOnlyList<Cell>)
            [
                c.Run.Name, c.ProspectiveCurrent is { } amperes ? Figures.Cell(amperes.Amperes, 0) : "no limit", c.Opening is { } band ? OpeningWords.Of(band) : "-", c.Clears ? "yes" : "no",
                CommonBlocks.Rating(fuse.Protection.FedRuns.FirstOrDefault(r => r.Run.Name == c.Run.Name)?.Rating.Current?.Amperes),
            ]),
        ]);
}
