
namespace Lighting.Calc;

/// <summary>Solves one electrical state sample after sample, each from the listed bike's volts. For one thread; solving allocates nothing.</summary>
internal sealed class StateSolver
{
    private readonly ReducedCircuit _circuit;
    private readonly CircuitSolver _solver;
    private readonly double _sign;
    private readonly double[] _start;
    private readonly int[] _placeOfLoad;

    /// <param name="circuit">The state.</param>
    /// <param name="bike">The bike.</param>
    /// <param name="listed">Its parts as listed.</param>
    /// <param name="volts">Volts of the source about which the samples lie.</param>
    /// <param name="setting">A setting of the state, for the message.</param>
    /// <exception cref="NetworkNotSolvedException">The state has no operating point.</exception>
    public StateSolver(ReducedCircuit circuit, Bike bike, SampleParts listed, double volts, Setting setting)
    {
        _circuit = circuit;
        _solver = new CircuitSolver(circuit.Circuit);
        // On a positive-earth bike the feed is the negative side; a lamp's volts count from its live to its earth side.
        _sign = bike.Earth == Earth.Negative ? 1 : -1;
        _placeOfLoad = new int[bike.Lamps.Length];
        Array.Fill(_placeOfLoad, -1);
        for (int i = 0; i < circuit.Loads.Length; i++)
            _placeOfLoad[circuit.Loads[i]] = i;
        Take(listed, volts);
        if (_solver.Solve() is var status && status != SolveStatus.Solved)
            throw new NetworkNotSolvedException($"The setting '{setting}' has no operating point.", setting, status == SolveStatus.DeadShort);
        _start = _solver.CopyVolts();
    }

    public double SourceAmperes => _solver.SourceAmperes;

    /// <summary>The loads of the whole circuit that can carry current here.</summary>
    public int[] Loads => _circuit.Loads;

    /// <returns>False when no operating point was found.</returns>
    public bool Solve(SampleParts parts, double volts)
    {
        Take(parts, volts);
        return _solver.SolveFrom(_start) == SolveStatus.Solved;
    }

    /// <summary>Volts from a lamp's live to its earth side.</summary>
    public double LampVolts(int load) => _sign * _solver.LoadVolts(_placeOfLoad[load]);

    public double LampAmperes(int load) => _sign * _solver.LoadAmperes(_placeOfLoad[load]);

    public bool HasDroppedOut(int load) => _solver.HasDroppedOut(_placeOfLoad[load]);

    public bool Carries(int load) => _placeOfLoad[load] >= 0;

    /// <summary>Place of the chain that a conductor of the whole circuit lies in; −1 when it carries nothing here.</summary>
    public int ChainOf(int conductor) => Array.FindIndex(_circuit.Chains, c => c.Contains(conductor));

    public double ChainAmperes(int chain) => Math.Abs(_solver.ConductorAmperes(chain));

    private void Take(SampleParts parts, double volts)
    {
        int[][] chains = _circuit.Chains;
        for (int i = 0; i < chains.Length; i++)
        {
            double ohms = 0;
            foreach (int conductor in chains[i])
                ohms += parts.Ohms[conductor];
            _solver.SetConductor(i, ohms);
        }

        for (int i = 0; i < _circuit.Loads.Length; i++)
            _solver.SetLoad(i, parts.Loads[_circuit.Loads[i]]);
        _solver.SetSource(volts, parts.BatteryOhms);
    }
}
