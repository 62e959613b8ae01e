using static Lighting.Calc.SizingReporter;

namespace Lighting.Calc;

/// <summary>Why no choice was found: what fails with the thickest everywhere, by how much, and what of it no wire
/// mends.</summary>
internal sealed class InfeasibleExplainer(SizingProblem problem, ShortCheck shorts)
{
    public string Explain()
    {
        WireSize thickest = problem.Sizes[^1];
        int[] all = [.. problem.Bike.Runs.Select(_ => problem.Sizes.Length - 1)];
        string[] reasons = [.. Strength(thickest), .. Fuses(thickest), .. Drops(all), .. Currents(all), .. Shorts(all)];
        return $"no choice of listed sizes was found: even with {thickest} everywhere, the thickest listed, "
            + $"{string.Join("; ", reasons)}";
    }

    private IEnumerable<string> Strength(WireSize thickest)
    {
        if (!problem.IsStrongEnough(problem.Sizes.Length - 1))
            yield return $"{N(thickest.CopperArea.SquareMillimeters)} mm² is less than the "
                + $"{N(problem.Options.MinimumArea.SquareMillimeters)} mm² wanted for strength";
    }

    private IEnumerable<string> Fuses(WireSize thickest)
    {
        for (int i = 0; i < problem.Bike.Runs.Length; i++)
        {
            if (problem.MeetsFuse(i, problem.Sizes.Length - 1))
                continue;
            Run run = problem.Bike.Runs[i];
            CurrentRating rating = problem.RatingOf(run, thickest);
            yield return rating.Current is { } carries
                ? $"'{run.Name}' carries {N(carries.Amperes)} A, {N(problem.FuseAmperes(i) - carries.Amperes)} A less "
                    + $"than its fuse '{problem.FuseOf[i]!.Name}' lets through"
                : $"'{run.Name}' has no rating: {rating.Explanation}";
        }
    }

    private IEnumerable<string> Drops(int[] all)
    {
        Bike thick = problem.With(all);
        SizedPoints points = SizedPoints.Of(problem, new HarnessNetwork(thick));
        for (int i = 0; i < thick.Lamps.Length; i++)
        {
            if (
                points.WorstDrop(i) is not { } worst
                || worst.Drop.DecimalFractions <= problem.Allowed + SizingProblem.VoltTolerance
            )
                continue;
            string text =
                $"the {thick.Lamps[i].Lamp} loses {N(worst.Drop.Percent)} % ({worst.Point.Setting}), "
                + $"{N(worst.Drop.Percent - 100 * problem.Allowed)} % more than the {N(100 * problem.Allowed)} % "
                + $"allowed";
            if (VoltageDropAnalysis.Breakdown(thick, worst.Point, i) is { } ledger)
            {
                double rest =
                    100
                    * ledger
                        .Entries.Where(e =>
                            e.Kind is not (VoltageDropKind.FeedWire or VoltageDropKind.ReturnWire)
                            && (problem.Options.CountBatteryDrop || e.Kind != VoltageDropKind.Battery)
                        )
                        .Sum(e => e.Voltage.Volts)
                    / ledger.SupplyVoltage.Volts;
                text +=
                    $"; joints, switches and fuses{(problem.Options.CountBatteryDrop ? " and the battery" : "")} alone "
                    + $"take {N(rest)} %, which no wire mends";
            }

            yield return text;
        }
    }

    private IEnumerable<string> Currents(int[] all)
    {
        if (new SizingTrial(problem).WorstFailure(all) is { Run: >= 0 } failure && !double.IsInfinity(failure.Excess))
            yield return $"'{problem.Bike.Runs[failure.Run].Name}' carries {N(100 * failure.Excess)} % more than its "
                + $"rating ({problem.States[failure.State].Setting})";
    }

    private IEnumerable<string> Shorts(int[] all) =>
        shorts
            .Failures(all)
            .Select(f =>
                $"a dead short at the end of '{f.Clearing.Run.Name}' draws "
                + $"{N(f.Clearing.ProspectiveCurrent!.Value.Amperes)} A and the fuse '{f.Fuse.Name}' "
                + $"{f.Clearing.Opening!.Explanation}"
            );
}
