using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Puts faults, a setting, a draw of the tolerances and an instrument into the circuit and solves it. One
/// thread at a time.</summary>
internal sealed class FaultSolver
{
    private readonly FaultCircuit _circuit;
    private readonly ToleranceDraws _draws;
    private readonly CircuitSolver _solver;
    private readonly double[] _ohms;
    private readonly Load[] _loads;
    private readonly bool[] _connected;
    private readonly Func<double, double> _amperesAt;
    private readonly bool _mayFall;
    private readonly double _ammeterOhms;
    private const double LeadOhms = 1e-3;

    private readonly int _minus;
    private readonly FaultyHarness _tried;

    // Of the last setting, which mostly is the next one too.
    private Setting? _setting;
    private double[] _warmth = [];
    private int _lead = -1;
    private int _common;
    private (int A, int B)? _bridge;
    private (int A, int B)? _jumper;
    private bool _testLamp;
    private double _emf;
    private double _sourceOhms;
    private bool _warm;
    private AlternatorEquivalent? _coil;
    private double _rpm;
    private GeneratorOutput? _generator;
    private BatteryAndRegulator? _bus;

    public FaultSolver(FaultCircuit circuit, ToleranceDraws draws)
    {
        _circuit = circuit;
        _draws = draws;
        _solver = new CircuitSolver(circuit.Circuit);
        Harness = new FaultyHarness(circuit);
        Cold = new ColdNetwork(circuit);
        _tried = new FaultyHarness(circuit);
        _amperesAt = AmperesAt;
        _ammeterOhms = circuit.Options.AmmeterResistance.Ohms;
        Supply = circuit.Supply;
        _mayFall = circuit.Bike.Lamps.Any(l => l.Specification.Type is LampType.Led);
        _ohms = new double[circuit.Circuit.ConductorCount];
        _loads = new Load[circuit.Circuit.LoadCount];
        _connected = new bool[circuit.Circuit.LoadCount];
        Array.Fill(_ohms, double.NaN);
        Array.Fill(_connected, true);
        foreach (int leak in circuit.Leaks)
            Set(leak, FaultCircuit.LeakOhms);
        foreach (
            int conductor in circuit
                .Shorts.Concat(circuit.Leads)
                .Concat(circuit.Commons)
                .Concat(circuit.Jumpers)
                .Concat(circuit.Bridges)
        )
            Set(conductor, double.PositiveInfinity);
        foreach ((int first, int second) in circuit.CrossingConductors)
        {
            Set(first, double.PositiveInfinity);
            Set(second, double.PositiveInfinity);
        }

        foreach (int holder in circuit.HolderConductors)
            Set(holder, 0);
        _minus = circuit.NodeOf(Bike.BatteryMinus);
        _common = _minus;
        Set(circuit.Commons[_minus], LeadOhms);
        Set(circuit.Meter, circuit.Options.MeterResistance.Ohms);
        Set(circuit.TestLamp, CircuitLoad.Of(circuit.TestLampSpecification, 1, Earth.Negative));
        Connect(circuit.TestLamp, false);
    }

    public CircuitSolver Circuit => _solver;

    /// <summary>The harness as it was last set.</summary>
    public FaultyHarness Harness { get; }

    /// <summary>The harness with the battery disconnected, for an ohmmeter.</summary>
    public ColdNetwork Cold { get; }

    /// <summary>What feeds the harness when it is set next.</summary>
    public TestSupply Supply { get; set; }

    /// <summary>Puts in what stays the same while instruments change.</summary>
    /// <param name="setting">The setting.</param>
    /// <param name="first">A fault, or <see cref="NoFault"/>.</param>
    /// <param name="second">A second fault; null for none.</param>
    /// <param name="draw">Which draw of the tolerances; −1 for the list's values.</param>
    /// <param name="supplyFactor">Voltage of battery or coil relative to the list.</param>
    /// <param name="place">The test, for what it changes of the harness: an ammeter or test lamp in a fuse's place, a
    /// good lamp, a jumper, what is unplugged; null for none of these.</param>
    /// <param name="speedFactor">Engine speed over that of the test; only a coil depends on it.</param>
    public void Set(
        Setting setting,
        in FaultMember first,
        in FaultMember? second = null,
        int draw = -1,
        double supplyFactor = 1,
        in TestPlace? place = null,
        double speedFactor = 1
    )
    {
        if (!ReferenceEquals(setting, _setting))
            (_setting, _warmth) = (setting, _circuit.WarmthIn(setting));
        Harness.Set(setting, first, second);
        int ammeter = -1;
        (int, int)? jumper = null;
        if (place is { } test)
        {
            Harness.Set(test);
            if (test.Instrument == Instrument.Ammeter && !_circuit.IsInBatteryLead(test))
                ammeter = _circuit.Fuses[test.Index];
            if (test.HasJumper)
                jumper = (test.JumperFrom, test.JumperTo);
        }

        foreach (int part in _circuit.Parts)
        {
            double ohms = part == ammeter ? _ammeterOhms : Ohms(part);
            bool isBypassed =
                part == ammeter && Harness.BypassedHolder >= 0 && part == _circuit.Fuses[Harness.BypassedHolder];
            double added = isBypassed ? 0 : Math.Min(FaultCircuit.OpenOhms, Harness.AddedOhms[part]);
            Set(
                part,
                Harness.IsOpen[part] && part != ammeter
                    ? FaultCircuit.OpenOhms
                    : Math.Max(FaultCircuit.LeastOhms, ohms + added)
            );
        }

        for (int i = 0; i < _circuit.Points.Length; i++)
            Set(_circuit.Shorts[i], Harness.ToFrameOhms[i]);
        for (int i = 0; i < _circuit.Holders.Length; i++)
            Set(_circuit.HolderConductors[i], Math.Min(FaultCircuit.OpenOhms, Harness.HolderOhms[i]));
        for (int i = 0; i < _circuit.Crossings.Length; i++)
        {
            bool crossed = i == Harness.Crossing;
            Set(_circuit.CrossingConductors[i].First, Crossed(crossed, _circuit.Crossings[i].First));
            Set(_circuit.CrossingConductors[i].Second, Crossed(crossed, _circuit.Crossings[i].Second));
        }

        Join(_circuit.Bridges, ref _bridge, Harness.Bridge, FaultCircuit.ShortOhms / 2);
        Join(_circuit.Jumpers, ref _jumper, jumper, LeadOhms);
        for (int i = 0; i < _circuit.Lamps.Length; i++)
            SetLamp(i, draw);
        double share = supplyFactor * Harness.VoltageShare;
        _sourceOhms = Math.Min(FaultCircuit.OpenOhms, Supply.SourceOhms + Harness.SourceOhms);
        _emf = Supply.OpenVolts * share;
        _coil = Supply.Coil?.Weakened(share, _sourceOhms);
        _rpm = Supply.Rpm * speedFactor;
        _generator = Supply.Running?.Generator(setting, Harness, speedFactor);
        _bus = Supply.Running?.Bus(Harness, supplyFactor);
        if (_circuit.Apart is { } apart)
        {
            Set(apart.ToBattery, _bus is null ? 0 : double.PositiveInfinity);
            Set(apart.ToJoint, _bus is null ? double.PositiveInfinity : 0);
            Connect(apart.Battery, _bus is not null);
        }

        double Ohms(int part) => _draws.Ohms(draw, part) * _warmth[part];
        double Crossed(bool crossed, int run) =>
            crossed && run != Harness.UnpluggedRun ? Ohms(_circuit.Runs[run]) : double.PositiveInfinity;
    }

    /// <summary>The state that was solved of the healthy bike, to compare faults with.</summary>
    /// <param name="setting">Its setting.</param>
    /// <param name="healthy">"Nothing".</param>
    /// <param name="place">The test, where it changes the harness.</param>
    public CircuitState StateOf(Setting setting, in FaultMember healthy, in TestPlace? place = null)
    {
        var harness = new FaultyHarness(_circuit);
        harness.Set(setting, healthy, null);
        if (place is { } test)
            harness.Set(test);
        return new CircuitState(_circuit, _solver, harness);
    }

    /// <summary>Whether a fault leaves a state as it is, so that it need not be solved.</summary>
    /// <param name="state">The state.</param>
    /// <param name="setting">Its setting.</param>
    /// <param name="fault">The fault.</param>
    /// <param name="everyPoint">Whether all points are to keep their voltages, not only the lamps.</param>
    /// <param name="place">The test, where it changes the harness.</param>
    public bool Holds(
        CircuitState state,
        Setting setting,
        in FaultMember fault,
        bool everyPoint,
        in TestPlace? place = null
    )
    {
        _tried.Set(setting, fault, null);
        if (place is { } test)
            _tried.Set(test);
        return state.Holds(_tried, everyPoint);
    }

    /// <summary>Puts the tip on a point, −1 takes it off, and the common lead on another, −1 for battery
    /// minus.</summary>
    public void Probe(int point, bool testLamp, int common = -1)
    {
        if (common < 0)
            common = _minus;
        if (_common != common)
        {
            Set(_circuit.Commons[_common], double.PositiveInfinity);
            Set(_circuit.Commons[common], LeadOhms);
            _common = common;
        }

        if (_lead != point)
        {
            // All leads of the tip that are not joined are open while one is, so that moving it changes no more than
            // two values.
            if ((_lead < 0) != (point < 0))
                foreach (int lead in _circuit.Leads)
                    Set(lead, point < 0 ? double.PositiveInfinity : FaultCircuit.OpenOhms);
            else if (_lead >= 0)
                Set(_circuit.Leads[_lead], FaultCircuit.OpenOhms);
            if (point >= 0)
                Set(_circuit.Leads[point], LeadOhms);
            _lead = point;
        }

        if (_testLamp != testLamp)
        {
            Connect(_circuit.TestLamp, testLamp);
            _testLamp = testLamp;
        }
    }

    /// <summary>Puts the instrument of a test on its place: meter or test lamp; the others need none.</summary>
    public void Probe(in TestPlace test)
    {
        if (_circuit.FuseOf(test) is >= 0 and var fuse)
            Probe(
                _circuit.Circuit.ConductorA[_circuit.Fuses[fuse]],
                testLamp: true,
                _circuit.Circuit.ConductorB[_circuit.Fuses[fuse]]
            );
        else if (test.Instrument is Instrument.Meter or Instrument.TestLamp)
            Probe(test.Index, test.Instrument == Instrument.TestLamp, test.To);
        else
            Probe(-1, testLamp: false);
    }

    /// <summary>What a meter shows on a test's point or points.</summary>
    public double Volts(in TestPlace test) => test.To < 0 ? Volts(test.Index) : Volts(test.Index) - Volts(test.To);

    /// <summary>Connects a meter to every point at once; a point whose voltage this does not change reads the same with
    /// one meter.</summary>
    public void LeakAsMeters(bool on) =>
        LeakThrough(on ? _circuit.Options.MeterResistance.Ohms : FaultCircuit.LeakOhms);

    /// <summary>Connects a resistance from every point to battery minus.</summary>
    public void LeakThrough(double ohms)
    {
        foreach (int leak in _circuit.Leaks)
            Set(leak, ohms);
    }

    /// <summary>Solves; a failure names the setting's fault.</summary>
    /// <exception cref="InvalidOperationException">No solution was found.</exception>
    public void Solve()
    {
        if (_bus is not null)
            SolveRunning(_bus, _generator!);
        else if (_coil is null)
            SolveBehind(_emf, _sourceOhms);
        else
            SolveBehind(_coil.TerminalVolts(_rpm, _amperesAt, _mayFall), 0);
    }

    // Where drivers drop out and come on again they are taken at the voltage at which they do.
    private void SolveRunning(BatteryAndRegulator bus, GeneratorOutput generator)
    {
        if (_circuit.Apart is { } apart)
        {
            JointBalance.Settle(bus, generator, fieldAmperes: 0, _mayFall, At, out _);
            return;

            (double Amperes, double BatteryVolts) At(double volts, Load battery)
            {
                Set(apart.Battery, battery);
                SolveBehind(volts, 0);
                return (_solver.SourceAmperes, _solver.LoadVolts(apart.Battery));
            }
        }

        SolveBehind(bus.HoldVolts, 0);
        if (bus.Holds(generator.AmperesAt(bus.HoldVolts) - _solver.SourceAmperes))
            return;
        if (
            !BusBalance.Settle(
                bus,
                generator,
                fieldAmperes: 0,
                _solver.SourceAmperes,
                (emf, ohms) =>
                {
                    SolveBehind(emf, ohms);
                    return (_solver.NodeVolts(HarnessGraph.Plus), _solver.SourceAmperes);
                },
                out double volts
            )
        )
            SolveBehind(volts, 0);
    }

    private double AmperesAt(double volts)
    {
        SolveBehind(volts, 0);
        return _solver.SourceAmperes;
    }

    /// <summary>Forgets the last solution, so that the next does not depend on it in its last digit.</summary>
    public void StartCold() => _warm = false;

    private void SolveBehind(double emf, double ohms)
    {
        _solver.SetSource(emf, ohms);
        SolveStatus status = _solver.Solve(_warm);
        _warm = status == SolveStatus.Solved;
        if (!_warm)
        {
            SolveDiagnostics d = _solver.Diagnostics;
            throw new InvalidOperationException(
                $"No operating point was found for a fault ({status}): {d.Refusal($"node {d.WorstNode}")}"
            );
        }
    }

    // The solver counts from the source's minus, which may be where the generator joins.
    public double Volts(int point) =>
        _circuit.Apart is null
            ? _solver.NodeVolts(point)
            : _solver.NodeVolts(point) - _solver.NodeVolts(HarnessGraph.Minus);

    public double TestLampVolts => _solver.LoadVolts(_circuit.TestLamp);

    /// <summary>What an ammeter shows of a fuse's current, without sign and no more than its maximum.</summary>
    public double FuseAmperes(int fuse) =>
        Math.Min(ReadingScale.MostAmperes, Math.Abs(_solver.ConductorAmperes(_circuit.Fuses[fuse])));

    /// <summary>What an ammeter shows in the lead of the battery, engine off.</summary>
    public double BatteryAmperes => Math.Min(ReadingScale.MostAmperes, Math.Abs(_solver.SourceAmperes));

    /// <summary>Voltage across a lamp, positive when its feed is on the live side.</summary>
    public double LampVolts(int lamp) =>
        _circuit.Bike.Earth == Earth.Negative
            ? _solver.LoadVolts(_circuit.Lamps[lamp])
            : -_solver.LoadVolts(_circuit.Lamps[lamp]);

    // Joins two points over the node that the conductors lead to; null joins none.
    private void Join(ImmutableArray<int> conductors, ref (int A, int B)? now, (int A, int B)? wanted, double ohms)
    {
        if (now == wanted)
            return;
        if (now is { } old)
        {
            Set(conductors[old.A], double.PositiveInfinity);
            Set(conductors[old.B], double.PositiveInfinity);
        }

        if (wanted is { } next)
        {
            Set(conductors[next.A], ohms);
            Set(conductors[next.B], ohms);
        }

        now = wanted;
    }

    private void SetLamp(int lamp, int draw)
    {
        LampFaultChange change = Harness.Lamps[lamp];
        if (change.ExchangedWith > 0)
        {
            Set(_circuit.Lamps[lamp], _draws.Lamp(draw, change.ExchangedWith - 1));
            Connect(_circuit.Lamps[lamp], true);
            return;
        }

        int quantity = _circuit.Bike.Lamps[lamp].Quantity,
            lit = quantity - change.Dead;
        Load load =
            lit <= 0 || (change.Dead == 0 && change.Other is null) ? _draws.Lamp(draw, lamp)
            : change.Other is { } other ? CircuitLoad.Of(other, lit, _circuit.Bike.Earth)
            : _draws.Lamp(draw, lamp, lit);
        Set(_circuit.Lamps[lamp], change.IsReversed ? load.Reverse() : load);
        Connect(_circuit.Lamps[lamp], lit > 0);
    }

    private void Set(int conductor, double ohms)
    {
        if (_ohms[conductor] == ohms)
            return;
        _ohms[conductor] = ohms;
        _solver.SetConductor(conductor, ohms);
    }

    private void Set(int load, in Load law)
    {
        if (_loads[load] == law)
            return;
        _loads[load] = law;
        _solver.SetLoad(load, law);
    }

    private void Connect(int load, bool connected)
    {
        if (_connected[load] == connected)
            return;
        _connected[load] = connected;
        _solver.SetLoadConnected(load, connected);
    }
}
