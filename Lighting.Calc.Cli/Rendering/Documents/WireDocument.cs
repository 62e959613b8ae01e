using System.Globalization;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>wire</c> gives for a bike: the size of each run and what limits it, or why none will do.</summary>
internal static class WireDocument
{
    private static readonly Columns<RunSizing> s_run = new()
    {
        { "run", "run", r => r.Run.Name },
        { "fitted", "fitted", r => r.Run.WireIsOpen ? (string?)null : r.Run.Wire.Name },
        { "fit", "wire", r => r.Chosen.Name },
        {
            "limited by",
            "limit",
            r => new Cell(LimitWords(r), LimitWords(r)) { Json = r.Limit.ToString().ToLowerInvariant() }
        },
        { "explanation", r => r.Explanation },
        { "load A", "worstCurrentA", r => r.WorstCurrent },
        { "rated A", "ratingA", r => r.Rating.Current, "F1" },
        { "drop V", "dropV", r => r.Drop },
    };

    private static readonly Columns<LampSizing> s_lamp = new()
    {
        { "lamp", "lamp", l => l.Lamp.Lamp },
        { "limit %", "allowedDropPercent", l => l.AllowedDrop },
        { "drop % as fitted", "dropFittedPercent", l => l.DropFitted },
        { "drop % as sized", "dropChosenPercent", l => l.DropChosen },
    };

    public static Document Of(Bike bike, WireSizingResult result, Condition when) =>
        new(
            CommonBlocks.TitleOf(bike, "Wires"),
            CommonBlocks.Within(when, Verdict(result)),
            Cautions.OfWork(bike),
            () =>
                [
                    .. result.IsFeasible
                        ? new Block[]
                        {
                            new Heading($"Sizes at {Figures.Volts(result.Supply)}"),
                            s_run.Table(result.Runs, isMain: true),
                            new Heading("Voltage drop of each lamp in its worst lasting setting"),
                            s_lamp.Table(result.Lamps),
                        }
                        : [s_run.Spreadsheet(result.Runs)],
                    .. CommonBlocks.RatedAs(bike),
                .. CommonBlocks.FindingBlocks(result.Findings),
                ],
            json =>
            {
                json.Write("bike", bike.Name);
                json.Write("supplyVoltageV", result.Supply);
                json.Write("explanation", result.Explanation);
                json.Write("copperFittedM3", result.CopperFitted?.CubicMeters);
                json.Write("copperChosenM3", result.CopperChosen?.CubicMeters);
                json.Write("runs", s_run, result.Runs);
                json.Write("lamps", s_lamp, result.Lamps);
                json.Write("findings", CommonBlocks.Finding, result.Findings);
            }
        );

    private static string Verdict(WireSizingResult result)
    {
        if (!result.IsFeasible)
            return Figures.Sentence(result.Explanation);
        string unmet = result.Unmet.IsEmpty
            ? ""
            : $"\nDrop limit not met: {string.Join(", ", result.UnmetLamps.Select(l => $"'{l}'"))} (see the "
                + $"findings).";
        string chosen = Figures.Sentence(result.Explanation) + unmet;
        if (result.CopperFitted is null)
            return $"Sizes for {result.Runs.Length} {(result.Runs.Length == 1 ? "run" : "runs")} with a blank wire "
                + $"cell.\n{chosen}";
        int larger = result.Runs.Count(r => Larger(r.Chosen, r.Run.Wire)),
            smaller = result.Runs.Count(r => Larger(r.Run.Wire, r.Chosen));
        return $"Of {result.Runs.Length} runs {Some(larger)} become larger than fitted and {Some(smaller)} "
            + $"smaller.\n{chosen}";
    }

    private static bool Larger(WireSize wire, WireSize than) =>
        wire.CopperArea.SquareMillimeters > than.CopperArea.SquareMillimeters * (1 + 1e-9);

    private static string Some(int count) => count == 0 ? "none" : count.ToString(CultureInfo.InvariantCulture);

    private static string LimitWords(RunSizing run) =>
        run.Limit switch
        {
            SizingConstraint.SmallestListed => "smallest listed",
            SizingConstraint.Mechanical => "strength",
            SizingConstraint.Heat => "heat",
            SizingConstraint.Fuse => "fuse",
            SizingConstraint.Short => "short",
            SizingConstraint.Drop => run.LimitingLamp is { } lamp ? $"drop ({lamp.Lamp})" : "drop",
            SizingConstraint.FewSizes => "few sizes",
            SizingConstraint.None => "nothing",
            _ => throw new InvalidOperationException($"Unknown limit {run.Limit}."),
        };
}
