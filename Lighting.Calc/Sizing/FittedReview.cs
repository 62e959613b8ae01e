using System.Collections.Immutable;
using static Lighting.Calc.SizingReporter;

namespace Lighting.Calc;

/// <summary>What is against the wires as they are fitted.</summary>
internal sealed class FittedReview(SizingProblem problem, SizedPoints fitted, ShortCheck shorts, ImmutableArray<RunSizing> chosen)
{
    private readonly Bike _bike = problem.Bike;

    public ImmutableArray<Finding> Findings() => [.. Runs(), .. Shorts(), .. Lamps()];

    private IEnumerable<Finding> Runs()
    {
        for (int i = 0; i < _bike.Runs.Length; i++)
        {
            Run run = _bike.Runs[i];
            CurrentRating rating = problem.RatingOf(run, run.Wire);
            OperatingPoint worst = fitted.Points.MaxBy(p => Math.Abs(p.Runs[i].Current.Amperes))!;
            double amperes = Math.Abs(worst.Runs[i].Current.Amperes), fuse = problem.FuseAmperes(i);
            if (rating.Current is not { } carries)
                yield return new Finding(Severity.Caution, run.Name, $"whether its {run.Wire} is thick enough cannot be told: {rating.Explanation}.");
            else if (carries.Amperes < fuse - SizingProblem.AmpereTolerance)
                yield return new Finding(Severity.Fault, run.Name, $"its {run.Wire} is too thin for the fuse '{problem.FuseOf[i]!.Name}': it carries {N(carries.Amperes)} A, the fuse lets {N(fuse)} A through.");
            else if (carries.Amperes < amperes - SizingProblem.AmpereTolerance)
                yield return new Finding(Severity.Fault, run.Name, $"its {run.Wire} is too thin for its current: it carries {N(carries.Amperes)} A, {N(amperes)} A flow ({worst.Setting}).");
            if (run.Wire.CopperArea.SquareMillimeters < problem.Options.MinimumArea.SquareMillimeters - 1e-9)
                yield return new Finding(Severity.Caution, run.Name, $"its {run.Wire} is thinner than the {N(problem.Options.MinimumArea.SquareMillimeters)} mm² wanted for strength.");
        }
    }

    private IEnumerable<Finding> Shorts() => shorts.Failures(_bike).Select(f => new Finding(Severity.Fault, f.Clearing.Run.Name,
        $"a dead short at its far end draws {N(f.Clearing.ProspectiveCurrent!.Value.Amperes)} A; the fuse '{f.Fuse.Name}' {f.Clearing.Opening!.Explanation}."));

    private IEnumerable<Finding> Lamps()
    {
        for (int i = 0; i < _bike.Lamps.Length; i++)
        {
            string lamp = _bike.Lamps[i].Lamp;
            if (fitted.WorstDrop(i) is not { } worst)
                yield return new Finding(Severity.Note, lamp, "no setting joins it to both battery terminals by wires and contacts alone, so its drop is not limited here.");
            else if (worst.Drop.DecimalFractions > problem.Allowed + SizingProblem.VoltTolerance)
                yield return new Finding(Severity.Fault, lamp, $"it loses {N(worst.Drop.Percent)} % ({worst.Point.Setting}), {N(100 * problem.Allowed)} % allowed{Thicker(worst, i)}.");
        }
    }

    private string Thicker(SizedPoints.LampDrop worst, int lamp)
    {
        HashSet<string> way = [.. VoltageDropAnalysis.Breakdown(_bike, worst.Point, lamp)?.Entries.Where(e => e.Kind is VoltageDropKind.FeedWire or VoltageDropKind.ReturnWire).Select(e => e.Part) ?? []];
        string[] thicker = [.. chosen.Where(r => way.Contains(r.Run.Name) && r.Chosen.CopperArea.SquareMillimeters > r.Run.Wire.CopperArea.SquareMillimeters + 1e-9).Select(r => $"'{r.Run.Name}' from {r.Run.Wire} to {r.Chosen}")];
        return thicker.Length == 0 ? "" : $"; too thin on its way: {string.Join(", ", thicker)}";
    }
}
