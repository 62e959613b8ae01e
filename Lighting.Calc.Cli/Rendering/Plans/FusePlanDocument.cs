using System.Text.Json;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>fuse --ways</c> gives: the table of the fuse box, its tapping points and its new wires.</summary>
internal static class FusePlanDocument
{
    private static readonly Columns<FuseWay> s_way = new()
    {
        { "fuse", "fuse", w => w.Fuse.Name },
        { "main", w => (bool?)w.IsMain },
        { "A", "ratingA", w => w.Fuse.Rating, Figures.Rated },
        { "colour", "colour", w => w.Colour },
        { "cont. A", "continuousCurrentA", w => w.ContinuousCurrent },
        { "peak A", "peakCurrentA", w => w.PeakCurrent },
        { "least wire", "smallestWire", w => w.SmallestWire?.Name },
        { "feeds", "circuits", w => w.IsMain ? new Cell("everything", w.Circuits) : w.Circuits },
        { "lamps", w => w.Lamps },
        { "inLine", w => (bool?)w.IsInLine },
        { "at", w => w.Fuse.From },
    };

    private static readonly Columns<Run> s_run = new()
    {
        { "run", "run", r => r.Name },
        { "from", "from", r => r.From },
        { "to", "to", r => r.To },
        { "wire", "wire", r => r.Wire.Name },
        { "cable", r => CommonBlocks.CableWord(r.Cable) },
        { "length m", "lengthM", r => Figures.Cell(r.Length.Meters, 2) },
    };

    private static readonly Columns<Fuse> s_removed = new()
    {
        { "fuse", "fuse", f => f.Name },
        { "A", "ratingA", f => f.Rating, Figures.Rated },
        { "from", "from", f => f.From },
        { "to", "to", f => f.To },
    };

    private static readonly Columns<MovedEnd> s_moved = new()
    {
        { "part", "part", m => m.Part },
        { "from", "from", m => m.From },
        { "to", "to", m => m.To },
    };

    public static Document Of(Bike bike, FusePlan plan) =>
        new(
            CommonBlocks.TitleOf(bike, "Fuse plan"),
            plan.IsFeasible ? Summary(plan) : $"No plan: {plan.Explanation}.",
            Cautions.OfWork(bike),
            () => Blocks(bike, plan),
            json =>
            {
                json.Write("bike", bike.Name);
                Write(json, plan);
            }
        )
        {
            Outcome = HoldsAll(plan) ? BikeVerdict.Suits : BikeVerdict.DoesNotSuit,
        };

    /// <summary>Whether a plan was found that keeps every limit.</summary>
    public static bool HoldsAll(FusePlan plan) =>
        plan.IsFeasible && plan.Findings.All(f => f.Severity != Severity.Fault);

    /// <summary>The members of a plan.</summary>
    public static void Write(Utf8JsonWriter json, FusePlan plan)
    {
        json.Write("explanation", plan.Explanation);
        json.Write("fuses", s_way, plan.Ways);
        json.Write("tappingPoints", plan.TappingPoints);
        json.Write("newRuns", s_run, plan.NewRuns);
        json.Write("resizedRuns", s_run, plan.ResizedRuns);
        json.Write("movedEnds", s_moved, plan.MovedEnds);
        json.Write("removedFuses", s_removed, plan.RemovedFuses);
        json.Write("findings", CommonBlocks.Finding, plan.Findings);
    }

    /// <summary>A plan in one line, for the page of another command.</summary>
    public static string Remedy(FusePlan plan) =>
        $"{Ways(plan)}: {plan.Explanation} (fuse BIKE --ways {plan.Ways.Count(w => !w.IsMain)}).";

    private static string Summary(FusePlan plan) =>
        $"{Ways(plan)}: {plan.Explanation}.\n"
        + (
            plan.Planned is null
                ? "The bike lists no runs: wires and a main fuse are not planned."
                : "With it every fuse suits: load, inrush, wires and short circuits."
                    + (
                        plan.RemovedFuses.IsEmpty
                            ? ""
                            : $" It replaces {Quoted(plan.RemovedFuses.Select(f => f.Name))}."
                    )
                    + (
                        HoldsAll(plan)
                            ? ""
                            : $" Drop limit not met: {Quoted(NotMet(plan))}."
                    )
        );

    private static IEnumerable<string> NotMet(FusePlan plan) =>
        plan.Findings.Where(f => f.Severity == Severity.Fault).SelectMany(f => f.Parts.Prepend(f.Subject));

    private static string Quoted(IEnumerable<string> names) => string.Join(", ", names.Select(n => $"'{n}'"));

    private static string Ways(FusePlan plan) =>
        plan.Ways.Count(w => !w.IsMain) is var ways && ways == 1 ? "1 way" : $"{ways} ways";

    private static IEnumerable<Block> Blocks(Bike bike, FusePlan plan)
    {
        yield return s_way
            .Only("fuse", "ratingA", "colour", "continuousCurrentA", "peakCurrentA", "smallestWire", "circuits")
            .Table(plan.Ways);
        yield return s_way
            .Only(
                "fuse",
                "main",
                "ratingA",
                "colour",
                "continuousCurrentA",
                "peakCurrentA",
                "smallestWire",
                "circuits",
                "lamps",
                "inLine",
                "at"
            )
            .Spreadsheet(plan.Ways);
        foreach (
            Block block in CommonBlocks
                .RatedAs(plan.Planned ?? bike)
                .Concat(CommonBlocks.FindingBlocks(plan.Findings))
        )
            yield return block;
        FuseWay[] inLine = [.. plan.Ways.Where(w => w.IsInLine)];
        if (inLine.Length > 0 && plan.Planned is not null)
            yield return new Paragraph(
                "In line, without a box: "
                    + $"{string.Join(", ", inLine.Select(w => $"'{w.Fuse.Name}' at '{w.Fuse.From}'"))}."
            );
        if (!plan.RemovedFuses.IsEmpty)
        {
            yield return new Heading("Fuses that are taken out");
            yield return s_removed.Table(plan.RemovedFuses);
        }

        if (!plan.NewRuns.IsEmpty)
        {
            yield return new Heading("New wires");
            yield return new Paragraph($"The box is fed from {Quoted(plan.TappingPoints)}.");
            yield return s_run.Table(plan.NewRuns);
        }

        if (!plan.MovedEnds.IsEmpty)
        {
            yield return new Heading("Ends that move");
            yield return s_moved.Table(plan.MovedEnds);
        }

        if (!plan.ResizedRuns.IsEmpty)
        {
            yield return new Heading("Wires of another size");
            yield return s_run.Table(plan.ResizedRuns);
        }
    }
}
