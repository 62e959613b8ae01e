namespace Lighting.Calc;

/// <summary>A solved state of the circuit, kept to tell which faults would change nothing in it.</summary>
/// <remarks>
/// A part without current may get any resistance, and two points of one voltage may be joined: all voltages and
/// currents stay as they are (the substitution theorem). Currents and voltages that the leaks alone make count as none;
/// behind a part that is opened a point then still loses its voltage, which no lamp shows.
/// </remarks>
internal sealed class CircuitState
{
    private const double NoAmperes = 1e-6;
    private const double NoVolts = 1e-7;

    // Up to this resistance the current of leaks makes no difference that a meter shows.
    private const double SlightOhms = 100;

    private readonly FaultCircuit _circuit;
    private readonly FaultyHarness _harness;
    private readonly double[] _volts;
    private readonly double[] _partVolts;
    private readonly double[] _partAmperes;
    private readonly double[] _lampVolts;
    private readonly double[] _holderAmperes;
    private readonly double[] _holderVolts;

    /// <param name="circuit">The circuit.</param>
    /// <param name="solver">Its solver, solved.</param>
    /// <param name="harness">The harness that was solved, from here on not to be changed.</param>
    public CircuitState(FaultCircuit circuit, CircuitSolver solver, FaultyHarness harness)
    {
        Circuit its = circuit.Circuit;
        (_circuit, _harness) = (circuit, harness);
        _volts = [.. circuit.Points.Select((_, p) => solver.NodeVolts(p))];
        // The conductors of the parts are the first.
        int parts = circuit.Parts.Length;
        _partVolts = [.. Enumerable.Range(0, parts).Select(p => Across(its.ConductorA[p], its.ConductorB[p]))];
        _partAmperes = [.. Enumerable.Range(0, parts).Select(solver.ConductorAmperes)];
        _lampVolts = [.. circuit.Lamps.Select(solver.LoadVolts)];
        _holderVolts = [.. circuit.HolderConductors.Select(h => Across(its.ConductorA[h], its.ConductorB[h]))];
        _holderAmperes = [.. circuit.Holders.Select(h => h.Lamps.Sum(l => solver.LoadAmperes(circuit.Lamps[l])))];

        double Across(int a, int b) => solver.NodeVolts(a) - solver.NodeVolts(b);
    }

    /// <summary>Whether another harness has the same currents.</summary>
    /// <param name="other">The harness.</param>
    /// <param name="everyPoint">Whether its points are to have the same voltages as well.</param>
    public bool Holds(FaultyHarness other, bool everyPoint)
    {
        if (!_harness.HasSameSource(other) || _harness.Crossing != other.Crossing)
            return false;
        if (_harness.Bridge != other.Bridge && !(_harness.Bridge is null && AreOne(other.Bridge!.Value)))
            return false;
        for (int part = 0; part < _partVolts.Length; part++)
            if (
                !MayBe(
                    _harness.IsOpen[part] ? double.PositiveInfinity : _harness.AddedOhms[part],
                    other.IsOpen[part] ? double.PositiveInfinity : other.AddedOhms[part],
                    _partAmperes[part],
                    _partVolts[part],
                    everyPoint
                )
            )
                return false;
        for (int h = 0; h < _holderVolts.Length; h++)
            if (
                !MayBe(_harness.HolderOhms[h], other.HolderOhms[h], _holderAmperes[h], _holderVolts[h], everyPoint)
            )
                return false;
        for (int p = 0; p < _volts.Length; p++)
            if (
                _harness.ToFrameOhms[p] != other.ToFrameOhms[p]
                && !AreOne((p, _circuit.FrameNode))
            )
                return false;
        for (int l = 0; l < _lampVolts.Length; l++)
            if (
                _harness.Lamps[l] != other.Lamps[l]
                && (!(Math.Abs(_lampVolts[l]) < NoVolts) || everyPoint && _harness.Lamps[l].Dead != other.Lamps[l].Dead)
            )
                return false;
        return true;
    }

    private bool AreOne((int A, int B) points) => Math.Abs(_volts[points.A] - _volts[points.B]) < NoVolts;

    private static bool MayBe(double before, double ohms, double amperes, double volts, bool everyPoint) =>
        before == ohms
        || Math.Abs(amperes) < NoAmperes
            && (Math.Abs(volts) < NoVolts || double.IsInfinity(ohms) && !everyPoint)
            && (!everyPoint || ohms < SlightOhms);
}
