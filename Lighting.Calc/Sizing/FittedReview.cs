using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>What is against the wires as they are fitted.</summary>
internal sealed class FittedReview(
    SizingProblem problem,
    SizedPoints fitted,
    ShortCheck shorts,
    ImmutableArray<RunSizing> chosen
)
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
            double amperes = Math.Abs(worst.Runs[i].Current.Amperes),
                fuse = problem.FuseAmperes(i);
            if (rating.Current is not { } carries)
                yield return new Finding(FindingKind.RunNotRated, Severity.Caution, run.Name)
                {
                    Parts = [run.Wire.Name],
                    Detail = rating.Explanation,
                };
            else if (carries.Amperes < fuse - SizingProblem.AmpereTolerance)
                yield return new Finding(FindingKind.RunRatedBelowFuse, Severity.Fault, run.Name)
                {
                    Value = carries,
                    Limit = ElectricCurrent.FromAmperes(fuse),
                    Parts = [run.Wire.Name, problem.FuseOf[i]!.Name],
                };
            else if (carries.Amperes < amperes - SizingProblem.AmpereTolerance)
                yield return new Finding(FindingKind.RunRatedBelowLoad, Severity.Fault, run.Name)
                {
                    Value = carries,
                    Limit = ElectricCurrent.FromAmperes(amperes),
                    Setting = worst.Setting,
                    Parts = [run.Wire.Name],
                };
            if (run.Wire.CopperArea.SquareMillimeters < problem.Options.MinimumArea.SquareMillimeters - 1e-9)
                yield return new Finding(FindingKind.RunBelowMinimum, Severity.Caution, run.Name)
                {
                    Value = run.Wire.CopperArea,
                    Limit = problem.Options.MinimumArea,
                    Parts = [run.Wire.Name],
                };
        }
    }

    private IEnumerable<Finding> Shorts() =>
        shorts
            .Failures(_bike)
            .Select(f => new Finding(FindingKind.ShortNotCleared, Severity.Fault, f.Clearing.Run.Name)
            {
                Value = f.Clearing.ProspectiveCurrent,
                Parts = [f.Fuse.Name],
                Detail = f.Clearing.Opening!.Explanation,
            });

    private IEnumerable<Finding> Lamps()
    {
        for (int i = 0; i < _bike.Lamps.Length; i++)
        {
            string lamp = _bike.Lamps[i].Lamp;
            if (fitted.WorstDrop(i) is not { } worst)
                yield return new Finding(FindingKind.DropNotLimited, Severity.Note, lamp);
            else if (worst.Drop.DecimalFractions > problem.Allowed + SizingProblem.VoltTolerance)
                yield return new Finding(FindingKind.DropOfFittedWires, Severity.Fault, lamp)
                {
                    Value = worst.Drop,
                    Limit = Ratio.FromDecimalFractions(problem.Allowed),
                    Setting = worst.Point.Setting,
                    Parts = Larger(worst, i),
                };
        }
    }

    // The runs on its way for which a larger size was chosen.
    private ImmutableArray<string> Larger(SizedPoints.LampDrop worst, int lamp)
    {
        HashSet<string> way =
        [
            .. VoltageDropAnalysis
                .Breakdown(_bike, worst.Point, lamp)
                ?.Entries.Where(e => e.Kind is VoltageDropKind.FeedWire or VoltageDropKind.ReturnWire)
                .Select(e => e.Part)
                ?? [],
        ];
        return
        [
            .. chosen
                .Where(r =>
                    way.Contains(r.Run.Name)
                    && r.Chosen.CopperArea.SquareMillimeters > r.Run.Wire.CopperArea.SquareMillimeters + 1e-9
                )
                .Select(r => $"'{r.Run.Name}' from {r.Run.Wire} to {r.Chosen}"),
        ];
    }
}
