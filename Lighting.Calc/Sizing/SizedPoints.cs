using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A harness solved in every distinct state, with the drops that are limited.</summary>
internal sealed class SizedPoints
{
    private readonly SizingProblem _problem;

    private SizedPoints(SizingProblem problem, HarnessNetwork network)
    {
        _problem = problem;
        HarnessSolver solver = network.CreateSolver();
        solver.SetBatteryResistance(ElectricResistance.FromOhms(problem.SourceOhms));
        Points = [.. problem.States.Select(Solved)];

        OperatingPoint Solved(SizingState state, int index)
        {
            solver.SetSupply(ElectricPotential.FromVolts(problem.StateVolts[index]));
            return solver.Solve(state.Setting);
        }
    }

    /// <summary>In the order of the problem's states.</summary>
    public ImmutableArray<OperatingPoint> Points { get; }

    public static SizedPoints Of(SizingProblem problem, HarnessNetwork network) => new(problem, network);

    /// <summary>The drop of a lamp that counts, where it is worst; null where no setting joins the lamp to both
    /// terminals.</summary>
    public LampDrop? WorstDrop(int lamp) =>
        Enumerable
            .Range(0, Points.Length)
            .Where(s => _problem.States[s].IsLimited[lamp])
            .Select(s => new LampDrop(DropIn(s, lamp), s, Points[s]))
            .MaxBy(d => d.Drop.DecimalFractions);

    private Ratio DropIn(int state, int lamp)
    {
        OperatingPoint point = Points[state];
        double battery = _problem.Options.CountBatteryDrop ? 0 : point.BatteryDrop.Volts;
        return Ratio.FromDecimalFractions(
            (point.SupplyVoltage.Volts - battery - point.Lamps[lamp].Voltage.Volts) / point.SupplyVoltage.Volts
        );
    }

    /// <summary>One lamp's drop.</summary>
    internal sealed record LampDrop(Ratio Drop, int State, OperatingPoint Point);
}
