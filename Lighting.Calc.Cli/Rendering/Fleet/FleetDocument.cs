namespace Lighting.Calc.Cli.Rendering;

/// <summary>The page on many bikes: counts, then the worst of them.</summary>
internal static class FleetDocument
{
    /// <param name="worst">The worst of the bikes that were checked, worst first.</param>
    /// <param name="failed">Those that could not be checked, the first of them where they are many.</param>
    /// <param name="counts">All bikes.</param>
    public static Document Of(IReadOnlyList<FleetRow> worst, IReadOnlyList<FleetRow> failed, FleetCounts counts)
    {
        long suit = counts.Of(FleetOutcome.Suits),
            fail = counts.Of(FleetOutcome.DoesNotSuit),
            open = counts.Of(FleetOutcome.NotJudged),
            wrong = counts.Bikes - suit - fail - open;
        string verdict =
            $"{Bikes(counts.Bikes)}: {suit} suit{(suit == 1 ? "s" : "")}, {fail} {(fail == 1 ? "does" : "do")} not suit"
            + (open == 0 ? "" : $", {open} not judged")
            + (wrong == 0 ? "." : $", {wrong} could not be checked (see the messages).");
        return new Document(
            "Check of many bikes",
            verdict,
            Cautions.OfAnyBike,
            () =>
                [
                    .. worst.Count == 0
                        ? []
                        : new Block[]
                        {
                            new Heading(
                                worst.Count == suit + fail + open
                                    ? "Worst first"
                                    : $"The worst {worst.Count} of {suit + fail + open}"
                            ),
                            FleetColumns.ForPeople.Table(worst),
                            new Paragraph(
                                "Fuse, load and continuous limit are those of the fuse with the least headroom, the "
                                    + "drop that of the lamp with the largest voltage drop, the speed the one from "
                                    + "which "
                                    + "charging covers the greatest average load. Check a bike alone for the whole "
                                    + "verdict."
                            ),
                        },
                ],
            _ => throw new InvalidOperationException("Rows are streamed as JSON.")
        )
        {
            Page = () => Page(worst, suit + fail + open, failed, wrong),
        };
    }

    private static IEnumerable<Block> Page(
        IReadOnlyList<FleetRow> worst,
        long isChecked,
        IReadOnlyList<FleetRow> failed,
        long wrong
    )
    {
        if (worst.Count > 0)
        {
            yield return new Heading(
                worst.Count == isChecked ? "Worst first" : $"The worst {worst.Count} of {isChecked}"
            );
            yield return FleetColumns.OfPage.Table(worst);
            yield return new Paragraph(
                "Load and its limit are those of the fuse with the least headroom, drop and its limit those of the "
                    + "lamp with the largest voltage drop; the speed is the one from which charging covers the "
                    + "greatest average load. Check a bike alone for the whole verdict."
            );
        }

        if (failed.Count == 0)
            yield break;
        yield return new Heading(
            failed.Count == wrong ? "Not checked" : $"Not checked: the first {failed.Count} of {wrong}"
        );
        yield return FleetColumns.OfFailures.Table(failed);
    }

    private static string Bikes(long count) => count == 1 ? "1 bike" : $"{count} bikes";
}
