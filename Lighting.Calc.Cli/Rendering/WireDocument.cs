using System.Globalization;
using Lighting.Calc.Conductors;
using Lighting.Calc.Harness;
using Lighting.Calc.WireSizing;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>wire</c> prints for a bike: the size of each run and what limits it, or why none will do.</summary>
internal static class WireDocument
{
    public static Document Of(Bike bike, WireSizingResult result)
    {
        var blocks = new List<Block>();
        if (result.IsFeasible)
        {
            blocks.Add(new Heading($"Sizes for a drop of {Figures.Percent(result.AllowedDrop)} at {Figures.Volts(result.Supply)}"));
            blocks.Add(Runs(result));
            blocks.Add(new Heading("Drop of each lamp in its worst setting"));
            blocks.Add(Lamps(result));
        }
        else
        {
            blocks.Add(new SpreadsheetOnly(Runs(result)));
        }

        blocks.AddRange(CommonBlocks.FindingBlocks(result.Findings));
        blocks.Add(CommonBlocks.Safety);
        return new Document(CommonBlocks.TitleOf(bike, "Wires"), Verdict(result), blocks);
    }

    private static string Verdict(WireSizingResult result)
    {
        if (!result.IsFeasible)
            return Figures.Sentence(result.Explanation);
        int thicker = result.Runs.Count(r => Thicker(r.Chosen, r.Run.Wire)), thinner = result.Runs.Count(r => Thicker(r.Run.Wire, r.Chosen));
        return $"Of {result.Runs.Length} runs {Some(thicker)} must be thicker than fitted and {Some(thinner)} may be thinner.\n{Figures.Sentence(result.Explanation)}";
    }

    private static bool Thicker(WireSize wire, WireSize than) => wire.CopperArea.SquareMillimeters > than.CopperArea.SquareMillimeters * (1 + 1e-9);

    private static string Some(int count) => count == 0 ? "none" : count.ToString(CultureInfo.InvariantCulture);

    private static Table Runs(WireSizingResult result) => new(
        [
            new("run", "run"), new("fitted", "fitted"), new("take", "wire"), new("limited by", "limit"), new("worst A", "worstCurrentA", true),
            new("carries A", "ratingA", true), new("drop V", "dropV", true),
        ],
        [
            .. result.Runs.Select(r => (IReadOnlyList<Cell>)
            [
                r.Run.Name, r.Run.Wire.Name, r.Chosen.Name, LimitWords(r), Figures.Cell(r.WorstCurrent), new Cell(r.Rating.Current is { } carries ? Figures.Number(carries.Amperes, 1) : "-", "", r.Rating.Current?.Amperes),
                Figures.Cell(r.Drop.Volts, 3),
            ]),
        ],
        IsMain: true);

    private static Table Lamps(WireSizingResult result) => new(
        [new("lamp", "lamp"), new("drop % as fitted", "dropFittedPercent", true), new("drop % with these wires", "dropChosenPercent", true)],
        [.. result.Lamps.Select(l => (IReadOnlyList<Cell>)[l.Lamp.Lamp, Figures.Percentage(l.DropFitted), Figures.Percentage(l.DropChosen)])]);

    private static string LimitWords(RunSizing run) => run.Limit switch
    {
        SizingLimit.ThinnestListed => "thinnest listed",
        SizingLimit.Mechanical => "strength",
        SizingLimit.Heat => "heat",
        SizingLimit.Fuse => "fuse",
        SizingLimit.Short => "short",
        SizingLimit.Drop => run.LimitingLamp is { } lamp ? $"drop ({lamp.Lamp})" : "drop",
        SizingLimit.None => "nothing",
        _ => throw new InvalidOperationException($"Unknown limit {run.Limit}."),
    };
}
