using Lighting.Calc.Fuses;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>Blocks that several documents share.</summary>
internal static class CommonBlocks
{
    /// <summary>A cell to be written in by hand.</summary>
    public const string Blank = "________";

    public static string TitleOf(Bike bike, string what) => bike.Name.Length == 0 ? what : $"{what}: {bike.Name}";

    public static Table FuseTable(IEnumerable<FuseSuitability> fuses, SettingLegend legend, bool isMain) => new(
        [
            new("fuse", "fuse"), new("rating A", "ratingA", true), new("worst A", "worstCurrentA", true), new("usable A", "usableA", true),
            new("verdict", "verdict"), new("smallest A", "smallestRatingA", true), new("largest A", "largestRatingA", true), new("setting", "worstSetting"),
        ],
        [
            .. fuses.Select(f => (IReadOnlyList<Cell>)
            [
                f.Fuse.Name, Rating(f.Fuse.Rating.Amperes), Figures.Cell(f.Steady.WorstCurrent), Figures.Cell(f.Steady.UsableCurrent),
                f.VerdictText, Rating(f.Advice.Smallest?.Amperes), Rating(f.Advice.Largest?.Amperes), legend.Of(f.Steady.WorstSetting),
            ]),
        ],
        isMain);

    public static IEnumerable<Block> FindingBlocks(IReadOnlyCollection<Finding> findings)
    {
        if (findings.Count == 0)
            yield break;
        yield return new Heading("Findings");
        yield return new Table(
            [new("", "severity"), new("about", "subject"), new("finding", "message")],
            [.. findings.Select(f => (IReadOnlyList<Cell>)[JsonRenderer.SeverityWord(f.Severity), f.Subject, f.Message])]);
    }

    public static Block Safety => new Paragraph(SafetyWords.Text);

    public static Cell Rating(double? amperes) => amperes is { } known
        ? new Cell(known.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture), "", known)
        : new Cell("-", "");
}
