namespace Lighting.Calc;

/// <summary>Solves the harness with trial sizes in every distinct state and finds the drops and currents that exceed
/// their limits.</summary>
/// <remarks>One solver a state, kept warm; the state that failed last is tried first.</remarks>
internal sealed class SizingTrial
{
    private readonly SizingProblem _problem;
    private readonly CircuitSolver[] _solvers;
    private readonly int[][] _set;
    private readonly List<int> _order;

    public SizingTrial(SizingProblem problem)
    {
        _problem = problem;
        _solvers = [.. problem.States.Select((s, i) => Solver(problem, s, problem.StateVolts[i]))];
        _set = [.. problem.States.Select(_ => Enumerable.Repeat(-1, problem.Bike.Runs.Length).ToArray())];
        _order = [.. Enumerable.Range(0, problem.States.Length)];
    }

    /// <summary>Whether every lamp and run holds with some sizes.</summary>
    public bool Holds(int[] sizes)
    {
        for (int i = 0; i < _order.Count; i++)
        {
            int state = _order[i];
            if (!FailuresIn(state, sizes).Any())
                continue;
            _order.RemoveAt(i);
            _order.Insert(0, state);
            return false;
        }

        return true;
    }

    /// <summary>By how much limits are exceeded: of each lamp and run in its worst state, added up; infinite where no
    /// operating point was found.</summary>
    public double Excess(int[] sizes) => Failures(sizes).GroupBy(f => (f.Lamp, f.Run), f => f.Excess).Sum(g => g.Max());

    /// <summary>The failure that is worst over all states; null when every lamp and run holds.</summary>
    public TrialFailure? WorstFailure(int[] sizes) => Failures(sizes).MaxBy(f => f.Excess);

    private IEnumerable<TrialFailure> Failures(int[] sizes) =>
        Enumerable.Range(0, _solvers.Length).SelectMany(s => FailuresIn(s, sizes));

    private IEnumerable<TrialFailure> FailuresIn(int state, int[] sizes)
    {
        if (Solved(state, sizes) is not { } solver)
        {
            yield return new TrialFailure(state, Lamp: -1, Run: -1, double.PositiveInfinity);
            yield break;
        }

        double supply = _problem.StateVolts[state];
        double sign = _problem.Bike.Earth == Earth.Negative ? 1 : -1;
        double battery = supply - solver.NodeVolts(_problem.Network.PlusNode);
        double least = supply * (1 - _problem.Allowed) - (_problem.Options.CountBatteryDrop ? 0 : battery);
        for (int i = 0; i < _problem.Bike.Lamps.Length; i++)
        {
            double shortOf = least - sign * solver.LoadVolts(_problem.Network.Loads[i]);
            if (_problem.States[state].IsLimited[i] && shortOf > SizingProblem.VoltTolerance)
                yield return new TrialFailure(state, Lamp: i, Run: -1, shortOf / supply);
        }

        for (int i = 0; i < sizes.Length; i++)
        {
            double rating = _problem.Ratings[i][sizes[i]],
                excess = Math.Abs(solver.ConductorAmperes(_problem.Network.RunConductors[i])) - rating;
            if (!(excess <= SizingProblem.AmpereTolerance))
                yield return new TrialFailure(
                    state,
                    Lamp: -1,
                    Run: i,
                    double.IsNaN(rating) ? double.PositiveInfinity : excess / rating
                );
        }
    }

    private CircuitSolver? Solved(int state, int[] sizes)
    {
        CircuitSolver solver = _solvers[state];
        int[] set = _set[state];
        for (int i = 0; i < sizes.Length; i++)
            if (set[i] != sizes[i])
            {
                set[i] = sizes[i];
                solver.SetConductor(
                    _problem.Network.RunConductors[i],
                    _problem.Ohms[i][sizes[i]] + _problem.Bike.Runs[i].TotalJointResistance.Ohms
                );
            }

        Setting setting = _problem.States[state].Setting;
        return solver.Solve(warmStart: true) switch
        {
            SolveStatus.Solved => solver,
            SolveStatus.DeadShort => throw new NetworkNotSolvedException(
                $"In the setting '{setting}' the battery's terminals are joined without any resistance: a dead short.",
                setting,
                isDeadShort: true
            ),
            _ => null,
        };
    }

    private static CircuitSolver Solver(SizingProblem problem, SizingState state, double volts)
    {
        HarnessNetwork network = problem.Network;
        Bike bike = problem.Bike;
        var solver = new CircuitSolver(network.Circuit);
        solver.SetSource(volts, problem.SourceOhms);
        for (int i = 0; i < bike.Fuses.Length; i++)
            solver.SetConductor(network.FuseConductors[i], FuseTable.ResistanceOf(bike.Fuses[i]).Ohms);
        for (int i = 0; i < bike.Switches.Length; i++)
            solver.SetConductor(
                network.ContactConductors[i],
                bike.Switches[i].IsClosed(state.Setting) ? bike.Switches[i].Resistance.Ohms : double.PositiveInfinity
            );
        for (int i = 0; i < bike.Lamps.Length; i++)
            solver.SetLoad(
                network.Loads[i],
                CircuitLoad.Of(bike.Lamps[i].Specification, bike.Lamps[i].Quantity, bike.Earth)
            );
        return solver;
    }
}
