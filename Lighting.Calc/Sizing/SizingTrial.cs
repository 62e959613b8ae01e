using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A limit that a trial exceeds.</summary>
/// <param name="Setting">The setting.</param>
/// <param name="Lamp">The lamp whose voltage drop is too large; −1 where it is none.</param>
/// <param name="Run">The run that carries more than its rating; −1 where it is none; neither where no operating point
/// was found.</param>
/// <param name="Excess">Voltage missing as a fraction of the source's, or current above the rating as a fraction of
/// it.</param>
internal readonly record struct TrialFailure(Setting Setting, int Lamp, int Run, double Excess);

/// <summary>Solves the harness with trial sizes and finds what exceeds its limit.</summary>
/// <remarks>One solver a state, kept warm. The states that failed a trial before decide nearly every later one: they
/// are tried first.</remarks>
internal sealed class SizingTrial
{
    private const double NoCurrent = 1e-12;

    private readonly SizingProblem _problem;
    private readonly ShortCheck _shorts;
    private readonly CircuitSolver[] _solvers;
    private readonly int[][] _set;
    private readonly List<int> _hard = [];
    private readonly List<int> _easy;

    public SizingTrial(SizingProblem problem)
    {
        _problem = problem;
        _shorts = new ShortCheck(problem);
        _solvers = [.. problem.Groups.First.Select((s, i) => Solver(s, problem.StateVolts[i]))];
        _set = [.. _solvers.Select(_ => Enumerable.Repeat(-1, problem.Bike.Runs.Length).ToArray())];
        _easy = [.. Enumerable.Range(0, _solvers.Length)];
    }

    /// <summary>How many sizes were tried.</summary>
    public long Tried { get; private set; }

    /// <summary>Whether every lamp, run and dead short holds with some sizes.</summary>
    public bool Holds(int[] sizes) => Carries(sizes) && !ShortFailures(sizes).Any();

    /// <summary>Whether every lamp and run holds.</summary>
    public bool Carries(int[] sizes)
    {
        _problem.Cancellation.ThrowIfCancellationRequested();
        Tried++;
        foreach (List<int> states in new[] { _hard, _easy })
            for (int i = 0; i < states.Count; i++)
            {
                int state = states[i];
                if (!FailuresIn(state, sizes).Any())
                    continue;
                states.RemoveAt(i);
                _hard.Insert(0, state);
                return false;
            }

        return true;
    }

    /// <summary>Whether some sizes, which hold, surely cease to with one run of another size: told from their solution,
    /// with a margin for what it leaves out. A state that never failed is not asked.</summary>
    public bool SurelyFailsWith(int[] sizes, int run, int size)
    {
        const double Sure = 0.9;
        return _hard.Any(state =>
            Foreseen(state, sizes, run, size) is { } then
            && Missing(state, Solved(state, sizes)!).Zip(then, (m, t) => m + Sure * (t - m)).Any(IsFailure)
        );
    }

    // By how many volts more than its limit allows each lamp drops once a run has another size, told from the solution
    // with some sizes; null where only a solution tells.
    private IEnumerable<double>? Foreseen(int state, int[] sizes, int run, int size)
    {
        if (Solved(state, sizes) is not { } solver)
            return null;
        int conductor = _problem.Network.RunConductors[run];
        double growth = _problem.Warms ? _problem.Growth[run][size].At(solver.ConductorAmperes(conductor)) : 1;
        double ohms = WithJoints(run, _problem.Ohms[run][size] * growth);
        return solver.NodeVoltsWith(conductor, ohms) is { } volts
            ? Missing(state, volts[_problem.Network.PlusNode], l => _problem.Network.Circuit.LoadVolts(l, volts))
            : null;
    }

    private IEnumerable<double> Missing(int state, CircuitSolver solver) =>
        Missing(state, solver.NodeVolts(_problem.Network.PlusNode), solver.LoadVolts);

    // Not a number of a lamp that is not judged in the state.
    private IEnumerable<double> Missing(int state, double plusVolts, Func<int, double> loadVolts)
    {
        double supply = _problem.StateVolts[state];
        double battery = _problem.Options.CountBatteryDrop ? 0 : supply - plusVolts;
        return _problem.Allowed.Select(
            (allowed, lamp) =>
                _problem.JudgesDrop(lamp, state)
                    ? supply * (1 - allowed)
                        - battery
                        - _problem.Bike.EarthSign * loadVolts(_problem.Network.Loads[lamp])
                    : double.NaN
        );
    }

    private static bool IsFailure(double missing) => missing > SizingProblem.Tolerance;

    /// <summary>By how much limits are exceeded in the states that failed so far: of each lamp and run in its worst,
    /// added up.</summary>
    public double Excess(int[] sizes) =>
        _hard.SelectMany(s => FailuresIn(s, sizes)).GroupBy(f => (f.Lamp, f.Run), f => f.Excess).Sum(g => g.Max());

    /// <summary>The same of the lamps alone, and for each run how much of it an ohm more adds, to first
    /// order.</summary>
    public (double Excess, double[] PerOhm) ExcessPerOhm(int[] sizes)
    {
        (int State, TrialFailure Failure)[] worst =
        [
            .. _hard
                .SelectMany(s => FailuresIn(s, sizes).Where(f => f.Lamp >= 0).Select(f => (State: s, Failure: f)))
                .GroupBy(f => f.Failure.Lamp)
                .Select(g => g.MaxBy(f => f.Failure.Excess)),
        ];
        var perOhm = new double[sizes.Length];
        foreach (IGrouping<int, (int State, TrialFailure Failure)> state in worst.GroupBy(f => f.State))
        {
            double supply = _problem.Bike.EarthSign * _problem.StateVolts[state.Key];
            double[] volts = Solved(state.Key, sizes)!.VoltsPerOhm(
                state.Select(f => _problem.Network.Loads[f.Failure.Lamp]),
                _problem.Network.RunConductors
            );
            for (int i = 0; i < perOhm.Length; i++)
                perOhm[i] -= volts[i] / supply;
        }

        return (worst.Sum(f => f.Failure.Excess), perOhm);
    }

    /// <summary>The failure that is worst over all states; null when every lamp and run holds.</summary>
    public TrialFailure? WorstFailure(int[] sizes) => WorstFailure(sizes, Enumerable.Range(0, _solvers.Length));

    /// <summary>The failure that is worst over some states.</summary>
    public TrialFailure? WorstFailure(int[] sizes, IEnumerable<int> states)
    {
        TrialFailure[] all = [.. states.SelectMany(s => FailuresIn(s, sizes))];
        return all.Length == 0 ? null : all.MaxBy(f => f.Excess);
    }

    /// <summary>The states in which, of some sizes that hold with one run of another, the worst failure can be: told
    /// from their solution, with a margin for what it leaves out.</summary>
    public IEnumerable<int> WorstStates(int[] sizes, int run, int size)
    {
        const double Near = 0.8;
        double?[] excess =
        [
            .. _solvers.Select((_, s) => Foreseen(s, sizes, run, size)?.Max() / _problem.StateVolts[s]),
        ];
        return excess.Max() is { } worst and > 0
            ? excess.Index().Where(e => !(e.Item < Near * worst)).Select(e => e.Index)
            : Enumerable.Range(0, excess.Length);
    }

    /// <summary>The states in which a run carries nearly what it is rated for.</summary>
    public IEnumerable<int> StatesNearRatings(int[] sizes)
    {
        const double Near = 0.8;
        return Enumerable
            .Range(0, _solvers.Length)
            .Where(s =>
                Solved(s, sizes) is not { } solver
                || sizes.Index().Any(r => !(AmperesIn(solver, r.Index) < Near * _problem.Ratings[r.Index][r.Item]))
            );
    }

    /// <summary>The lamps whose drop even the largest wires do not keep within its limit, each with that drop; none
    /// where the largest exceed another limit too.</summary>
    public ImmutableArray<(int Lamp, double Drop)> NotKeptByLargest()
    {
        int[] sizes = _problem.Choice(_ => _problem.Offered[^1]);
        TrialFailure[] all = [.. Enumerable.Range(0, _solvers.Length).SelectMany(s => FailuresIn(s, sizes))];
        bool isDropAlone =
            all.All(f => f.Lamp >= 0)
            && Enumerable.Range(0, sizes.Length).All(r => _problem.MeetsFuse(r, sizes[r]))
            && _problem.Runs.All(r => _problem.IsStrongEnough(r, sizes[r]))
            && !ShortFailures(sizes).Any();
        return isDropAlone
            ? [.. all.GroupBy(f => f.Lamp).Select(g => (g.Key, _problem.Allowed[g.Key] + g.Max(f => f.Excess)))]
            : [];
    }

    /// <summary>The dead shorts that do not clear, each with its fuse.</summary>
    public IEnumerable<(ShortCircuitCheck Clearing, Fuse Fuse)> ShortFailures(int[] sizes) =>
        _shorts.Failures(_problem.With(sizes));

    private IEnumerable<TrialFailure> FailuresIn(int state, int[] sizes)
    {
        Setting setting = _problem.Groups.First[state];
        if (Solved(state, sizes) is not { } solver)
        {
            yield return new TrialFailure(setting, Lamp: -1, Run: -1, double.PositiveInfinity);
            yield break;
        }

        foreach ((int lamp, double missing) in Missing(state, solver).Index())
            if (IsFailure(missing))
                yield return new TrialFailure(setting, lamp, Run: -1, missing / _problem.StateVolts[state]);
        for (int i = 0; i < sizes.Length; i++)
        {
            double rating = _problem.Ratings[i][sizes[i]];
            double excess = AmperesIn(solver, i) - rating;
            if (!(excess <= SizingProblem.Tolerance))
                yield return new TrialFailure(
                    setting,
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
        if (solver.IsSolved && !Enumerable.Range(0, sizes.Length).Any(i => set[i] != sizes[i] && HasCurrent(i)))
            return solver;
        for (int i = 0; i < sizes.Length; i++)
            if (set[i] != sizes[i] || _problem.Warms)
            {
                set[i] = sizes[i];
                Set(i, _problem.Ohms[i][sizes[i]]);
            }

        Setting setting = _problem.Groups.First[state];
        SolveStatus status = solver.Solve(warmStart: true);
        if (status == SolveStatus.Solved && _problem.Warms)
        {
            double[] warm =
            [
                .. sizes.Select(
                    (size, i) =>
                        _problem.Ohms[i][size]
                        * _problem.Growth[i][size].At(solver.ConductorAmperes(_problem.Network.RunConductors[i]))
                ),
            ];
            for (int i = 0; i < warm.Length; i++)
                Set(i, warm[i]);
            status = solver.Solve(warmStart: true);
        }

        return status switch
        {
            SolveStatus.Solved => solver,
            SolveStatus.DeadShort => throw new NetworkNotSolvedException(
                $"In the setting '{setting}' the battery's terminals are joined without any resistance: a dead short.",
                setting,
                isDeadShort: true
            ),
            _ => null,
        };

        // Without current in a run its size changes nothing.
        bool HasCurrent(int run) => AmperesIn(solver, run) > NoCurrent;

        void Set(int run, double ohms) =>
            solver.SetConductor(_problem.Network.RunConductors[run], WithJoints(run, ohms));
    }

    private double WithJoints(int run, double ohms) => ohms + _problem.Bike.Runs[run].TotalJointResistance.Ohms;

    private double AmperesIn(CircuitSolver solver, int run) =>
        Math.Abs(solver.ConductorAmperes(_problem.Network.RunConductors[run]));

    private CircuitSolver Solver(Setting setting, double volts)
    {
        HarnessNetwork network = _problem.Network;
        Bike bike = _problem.Bike;
        var solver = new CircuitSolver(network.Circuit);
        solver.SetSource(volts, _problem.SourceOhms);
        for (int i = 0; i < bike.Fuses.Length; i++)
            solver.SetConductor(network.FuseConductors[i], FuseTable.ResistanceOf(bike.Fuses[i]).Ohms);
        ContactSet closed = network.Graph.Switches.ClosedIn(setting);
        for (int i = 0; i < bike.Switches.Length; i++)
            solver.SetConductor(
                network.ContactConductors[i],
                closed.Has(i) ? bike.Switches[i].Resistance.Ohms : double.PositiveInfinity
            );
        for (int i = 0; i < bike.Lamps.Length; i++)
            solver.SetLoad(
                network.Loads[i],
                CircuitLoad.Of(bike.Lamps[i].Specification, bike.Lamps[i].Quantity, bike.Earth)
            );
        return solver;
    }
}
