using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A bike with some wires, solved: the drop of each lamp, and what the checks have against its
/// wires.</summary>
internal sealed class FittedWires
{
    private readonly SizingProblem _problem;

    // By which drop is judged: where the generator joins apart from the battery it counts from there, as in a check.
    private readonly ImmutableArray<OperatingPoint> _dropPoints;

    private FittedWires(SizingProblem problem, Bike bike)
    {
        (_problem, Bike) = (problem, bike);
        HarnessSolver solver = new HarnessNetwork(bike, problem.Network).CreateSolver();
        solver.WarmWires(WireHeat.Of(bike, problem.Options.HeatRule));
        solver.SetBatteryResistance(ElectricResistance.FromOhms(problem.SourceOhms));
        Points = [.. problem.Groups.First.Select(Solved)];
        _dropPoints = problem.IsFedAtGenerator ? Running() : Points;

        OperatingPoint Solved(Setting setting, int state)
        {
            solver.SetSupply(ElectricPotential.FromVolts(problem.StateVolts[state]));
            return solver.Solve(setting);
        }

        ImmutableArray<OperatingPoint> Running()
        {
            BikeSolution solution = BikeSolution.Solve(bike, problem.Options.Check, problem.Cancellation);
            return
            [
                .. problem.Groups.First.Select(
                    (s, state) => solution.Points.FirstOrDefault(p => p.Setting.Equals(s)) ?? Points[state]
                ),
            ];
        }
    }

    public Bike Bike { get; }

    /// <summary>One for each state.</summary>
    public ImmutableArray<OperatingPoint> Points { get; }

    public static FittedWires Of(SizingProblem problem, Bike bike) => new(problem, bike);

    /// <summary>The drop of a lamp that counts, where it is worst; null where no setting joins the lamp to both
    /// terminals.</summary>
    public LampDrop? WorstDrop(int lamp) =>
        Enumerable
            .Range(0, _dropPoints.Length)
            .Where(s => _problem.JudgesDrop(lamp, s))
            .Select(s => new LampDrop(DropIn(_dropPoints[s], lamp), _dropPoints[s]))
            .MaxBy(d => d.Drop.DecimalFractions);

    /// <summary>The runs that carry more than their wire is rated for.</summary>
    public IEnumerable<(Run Run, double Rated, double Amperes, Setting Setting)> Overloaded()
    {
        for (int i = 0; i < Bike.Runs.Length; i++)
        {
            OperatingPoint worst = Points.MaxBy(p => p.Solved.RunAmperes(i))!;
            double amperes = worst.Solved.RunAmperes(i);
            if (
                _problem.RatingOf(Bike.Runs[i], Bike.Runs[i].Wire).Current is { } rated
                && rated.Amperes < amperes - SizingProblem.Tolerance
            )
                yield return (Bike.Runs[i], rated.Amperes, amperes, worst.Setting);
        }
    }

    /// <summary>What <c>check</c> finds against the wires and their fuses, by the limits of the sizing.</summary>
    public ImmutableArray<Finding> Findings()
    {
        Bike judged = _problem.Options.AllowedDrop is { } drop
            ? Bike with
            {
                AllowedDrop = drop,
                Lamps = [.. Bike.Lamps.Select(l => l with { AllowedDrop = null })],
            }
            : Bike;
        return
        [
            .. FuseCheck
                .Evaluate(Bike, Points, _problem.Options.Check.Fuses, _problem.Cancellation)
                .SelectMany(f => f.Findings),
            .. LampChecks
                .Of(
                    judged,
                    _dropPoints,
                    IntendedOnStates.WorstOfEach(Bike, _dropPoints, _problem.Options.Check.Fuses.MomentarySwitches),
                    _problem.Network.Graph
                )
                .Where(f => f.Kind == FindingKind.VoltageDropTooLarge),
            .. BikeCheck.NoFuse(Bike),
            .. Overloaded()
                .Select(r => new Finding(FindingKind.RunOverloaded, Severity.Fault, r.Run.Name)
                {
                    Value = ElectricCurrent.FromAmperes(r.Amperes),
                    Limit = ElectricCurrent.FromAmperes(r.Rated),
                    Setting = r.Setting,
                    Detail = _problem.RatingOf(r.Run, r.Run.Wire).Explanation,
                }),
        ];
    }

    private Ratio DropIn(OperatingPoint point, int lamp)
    {
        double battery = _problem.Options.CountBatteryDrop ? 0 : point.BatteryDrop.Volts;
        return Ratio.FromDecimalFractions(
            (point.SupplyVoltage.Volts - battery - point.Lamps[lamp].Voltage.Volts) / point.SupplyVoltage.Volts
        );
    }

    /// <summary>One lamp's drop.</summary>
    internal sealed record LampDrop(Ratio Drop, OperatingPoint Point);
}
