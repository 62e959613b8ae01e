using UnitsNet;

namespace Lighting.Calc;

/// <summary>Solves one harness again and again, with changed supply, resistances or lamps, without rebuilding
/// it.</summary>
/// <remarks>For one thread at a time; the harness itself is not changed.</remarks>
public sealed class HarnessSolver
{
    /// <summary>Operating points kept of one set of values.</summary>
    private const int MostSolved = 256;

    private readonly HarnessNetwork _network;
    private readonly CircuitSolver _solver;
    private readonly Func<Setting, bool>[] _litTests;

    // What was solved with the values as they are; settings that differ in dead contacts only need no solution of their
    // own.
    private readonly Dictionary<EliminationPlan, SolvedCircuit> _solved = [];
    private HarnessValues _values;
    private WireHeat _heat;
    private bool _hasDrivers;
    private bool _valuesAreShared;
    private double[] _wireOhmsInUse;
    private double _supplyVolts;
    private double _batteryOhms;
    private Load _battery;
    private Load _batteryInUse;

    internal HarnessSolver(HarnessNetwork network)
    {
        _network = network;
        _solver = new CircuitSolver(network.Circuit);
        Bike bike = network.Bike;
        _litTests = bike.HasNetwork ? [] : [.. bike.Lamps.Select(l => network.Graph.Switches.TestOf(l.LitWhen))];
        _values = new HarnessValues(bike);
        _heat = network.Heat;
        _supplyVolts = bike.ChargingVoltage.Volts;
        _batteryOhms = bike.BatteryResistance.Ohms;
        for (int i = 0; i < network.FuseConductors.Length; i++)
            _solver.SetConductor(network.FuseConductors[i], _values.FuseOhms[i]);
        _wireOhmsInUse = _values.WireOhms;
        for (int i = 0; i < network.Loads.Length; i++)
            SetLoad(i);
    }

    /// <summary>Sets the voltage of the source before the battery's resistance.</summary>
    /// <param name="voltage">Zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The voltage is below zero.</exception>
    public void SetSupply(ElectricPotential voltage)
    {
        double volts =
            voltage.Volts >= 0
                ? voltage.Volts
                : throw new ArgumentOutOfRangeException(
                    nameof(voltage),
                    voltage,
                    "Supply voltage must be zero or more."
                );
        if (volts == _supplyVolts)
            return;
        _solved.Clear();
        _supplyVolts = volts;
    }

    /// <summary>Sets the resistance of the battery and its posts.</summary>
    /// <param name="resistance">Zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The resistance is below zero.</exception>
    public void SetBatteryResistance(ElectricResistance resistance)
    {
        double ohms = Checked(resistance);
        if (ohms == _batteryOhms)
            return;
        _solved.Clear();
        _batteryOhms = ohms;
    }

    /// <summary>Sets the battery of a harness that is fed apart from it; none by default.</summary>
    internal void SetBattery(in Load battery)
    {
        if (battery == _battery)
            return;
        _solved.Clear();
        _battery = battery;
    }

    /// <summary>The harness.</summary>
    internal HarnessNetwork Network => _network;

    /// <summary>Whether it has LED drivers, whose current falls as the voltage rises.</summary>
    internal bool HasDrivers => _hasDrivers;

    private void UseBattery(in Load battery)
    {
        if (!_network.IsApart || battery == _batteryInUse)
            return;
        _batteryInUse = battery;
        _solver.SetLoad(_network.Battery, battery);
    }

    /// <summary>Sets the resistance of a run: its wire and its joints.</summary>
    /// <param name="run">Index in the bike's runs.</param>
    /// <param name="wire">Resistance of the wire at the bike's wire temperature, zero or more.</param>
    /// <param name="joints">Resistance of its joints together, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such run, or a resistance is below zero.</exception>
    public void SetRun(int run, ElectricResistance wire, ElectricResistance joints)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(run);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(run, _values.WireOhms.Length);
        double wireOhms = Checked(wire),
            jointOhms = Checked(joints);
        HarnessValues values = Changing();
        // The circuit takes them when a setting is closed.
        (values.WireOhms[run], values.JointOhms[run]) = (wireOhms, jointOhms);
    }

    /// <summary>Sets the resistance of a run: its wire and its joints.</summary>
    /// <param name="run">Name of the run; case does not matter.</param>
    /// <param name="wire">Resistance of the wire at the bike's wire temperature, zero or more.</param>
    /// <param name="joints">Resistance of its joints together, zero or more.</param>
    /// <exception cref="ArgumentException">No run has that name; the message suggests the nearest.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A resistance is below zero.</exception>
    public void SetRun(string run, ElectricResistance wire, ElectricResistance joints) =>
        SetRun(PartNames.PlaceOf(run, _network.Bike.Runs, r => r.Name, "run", nameof(run)), wire, joints);

    /// <summary>Warms the wires in another way.</summary>
    internal void WarmWires(WireHeat heat)
    {
        _solved.Clear();
        _heat = heat;
    }

    /// <summary>Sets the resistance of a contact when it is closed.</summary>
    /// <param name="contact">Index in the bike's switch contacts.</param>
    /// <param name="resistance">Zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such contact, or the resistance is below
    /// zero.</exception>
    public void SetContact(int contact, ElectricResistance resistance)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(contact);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(contact, _values.ContactOhms.Length);
        double ohms = Checked(resistance);
        Changing().ContactOhms[contact] = ohms;
    }

    /// <summary>Sets the resistance of a contact when it is closed.</summary>
    /// <param name="contact">Name of the contact, such as <c>lights (switch in to dip feed)</c>; case does not
    /// matter.</param>
    /// <param name="resistance">Zero or more.</param>
    /// <exception cref="ArgumentException">No contact has that name; the message suggests the nearest.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The resistance is below zero.</exception>
    public void SetContact(string contact, ElectricResistance resistance) =>
        SetContact(
            PartNames.PlaceOf(contact, _network.Bike.Switches, c => c.Name, "contact", nameof(contact)),
            resistance
        );

    /// <summary>Sets the resistance of a fuse.</summary>
    /// <param name="fuse">Index in the bike's fuses.</param>
    /// <param name="resistance">Zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such fuse, or the resistance is below
    /// zero.</exception>
    public void SetFuse(int fuse, ElectricResistance resistance)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(fuse);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(fuse, _values.FuseOhms.Length);
        double ohms = Checked(resistance);
        Changing().FuseOhms[fuse] = ohms;
        _solver.SetConductor(_network.FuseConductors[fuse], ohms);
    }

    /// <summary>Sets the resistance of a fuse.</summary>
    /// <param name="fuse">Name of the fuse; case does not matter.</param>
    /// <param name="resistance">Zero or more.</param>
    /// <exception cref="ArgumentException">No fuse has that name; the message suggests the nearest.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The resistance is below zero.</exception>
    public void SetFuse(string fuse, ElectricResistance resistance) =>
        SetFuse(PartNames.PlaceOf(fuse, _network.Bike.Fuses, f => f.Name, "fuse", nameof(fuse)), resistance);

    /// <summary>Puts another lamp in a fitted lamp's place.</summary>
    /// <param name="lamp">Index in the bike's lamps.</param>
    /// <param name="specification">What takes its place.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such lamp.</exception>
    public void SetLamp(int lamp, LampSpecification specification)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(lamp);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(lamp, _values.Lamps.Length);
        Changing().Lamps[lamp] = specification;
        SetLoad(lamp);
    }

    /// <summary>Puts another lamp in a fitted lamp's place.</summary>
    /// <param name="lamp">Name of the lamp; case does not matter.</param>
    /// <param name="specification">What takes its place.</param>
    /// <exception cref="ArgumentException">No lamp has that name; the message suggests the nearest.</exception>
    public void SetLamp(string lamp, LampSpecification specification) =>
        SetLamp(PartNames.PlaceOf(lamp, _network.Bike.Lamps, l => l.Lamp, "lamp", nameof(lamp)), specification);

    /// <summary>Solves a setting.</summary>
    /// <param name="setting">The setting; a switch it does not name counts as off.</param>
    /// <returns>Voltage at every point and current in every part; of several states the bike can hold, the bright
    /// one.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The bike's battery or a contact that the setting closes has a
    /// resistance below zero.</exception>
    /// <exception cref="NetworkNotSolvedException">The source is shorted without any resistance, or no solution was
    /// found.</exception>
    public OperatingPoint Solve(Setting setting) =>
        new(Solve(setting, _network.Graph.Carrying.Of(_network.Graph.Switches.ClosedIn(setting))), setting);

    /// <summary>The same with the contacts known that are closed and may carry current.</summary>
    internal SolvedCircuit Solve(Setting setting, ContactSet mayCarry)
    {
        Close(setting, mayCarry, _values.WireOhms);
        return Solved(setting);
    }

    /// <summary>The contacts that are closed in a setting and may carry current.</summary>
    internal ContactSet CarryingIn(Setting setting) =>
        _network.Graph.Carrying.Of(_network.Graph.Switches.ClosedIn(setting));

    /// <summary>Voltage at the coil of a relay while its contacts are at rest, which decides whether it pulls in; null
    /// where the harness has no solution then.</summary>
    internal double? AtRestVolts(Setting setting, int relay)
    {
        _wireOhmsInUse = UseWires(_values.WireOhms);
        return AtRestVolts(setting, _network.Graph.Switches.ClosedIn(setting), relay);
    }

    private double? AtRestVolts(Setting setting, ContactSet closed, int relay)
    {
        RelayStates relays = _network.Graph.Switches.Relays!;
        SetContacts(setting, _network.Graph.Carrying.Of(relays.With(closed, relay, isIn: false)));
        UseBattery(_battery);
        _solver.SetSource(_supplyVolts, _batteryOhms);
        return _solver.Solve() == SolveStatus.Solved
            ? Math.Abs(_solver.LoadVolts(_network.Loads[relays.Coils[relay]]))
            : null;
    }

    // Relays that the wiring feeds stay at rest where the voltage at their coil does not pull them in.
    private ContactSet PulledIn(Setting setting, ContactSet mayCarry)
    {
        Switches switches = _network.Graph.Switches;
        if (switches.RelaysIn(setting) is not { } settled || !settled.IsIn.Contains(true))
            return mayCarry;
        RelayStates relays = switches.Relays!;
        ContactSet closed = settled.Closed;
        bool[] isIn = [.. settled.IsIn];
        for (bool changed = true; changed;)
        {
            changed = false;
            for (int r = 0; r < isIn.Length; r++)
                if (
                    isIn[r]
                    && AtRestVolts(setting, closed, r) is { } volts
                    && volts < _network.Bike.Lamps[relays.Coils[r]].Coil!.PullInVoltage.Volts - 1e-9
                )
                {
                    (isIn[r], changed) = (false, true);
                    closed = relays.With(closed, r, isIn: false);
                }
        }

        return closed.Equals(settled.Closed) ? mayCarry : _network.Graph.Carrying.Of(closed);
    }

    /// <summary>Closes the contacts of a setting, with wires as warm as in a solution of it, for
    /// <see cref="Behind"/>.</summary>
    internal void Close(Setting setting, ContactSet mayCarry, double[] wireOhms)
    {
        _wireOhmsInUse = UseWires(wireOhms);
        SetContacts(setting, PulledIn(setting, mayCarry));
        UseBattery(_battery);
    }

    private void SetContacts(Setting setting, ContactSet mayCarry)
    {
        for (int i = 0; i < _network.ContactConductors.Length; i++)
            _solver.SetConductor(
                _network.ContactConductors[i],
                mayCarry.Has(i) ? _values.ContactOhms[i] : double.PositiveInfinity
            );
        for (int i = 0; i < _litTests.Length; i++)
            _solver.SetLoadConnected(_network.Loads[i], _litTests[i](setting));
    }

    /// <summary>Solves the harness, its contacts as closed last, behind a source that is part of a larger
    /// balance.</summary>
    /// <returns>Voltage at the battery's terminals and current into the harness.</returns>
    /// <exception cref="NetworkNotSolvedException">The source is shorted without any resistance, or no solution was
    /// found.</exception>
    internal (double Volts, double Amperes) Behind(Setting setting, double emfVolts, double ohms)
    {
        _solver.SetSource(emfVolts, ohms);
        Require(_solver.Solve(warmStart: true), setting);
        return (_solver.NodeVolts(_network.PlusNode), _solver.SourceAmperes);
    }

    /// <summary>The same with the battery as one of the parts of a harness that is fed apart from it.</summary>
    /// <returns>Current into the harness and its battery, and the voltage at the battery's terminals.</returns>
    internal (double Amperes, double BatteryVolts) At(Setting setting, double volts, in Load battery)
    {
        UseBattery(battery);
        double amperes = Behind(setting, volts, 0).Amperes;
        return (amperes, _solver.LoadVolts(_network.Battery));
    }

    /// <summary>Voltage of a lamp at the last solution, live side against earth side.</summary>
    internal double LampVolts(int lamp) => _network.Bike.EarthSign * _solver.LoadVolts(_network.Loads[lamp]);

    /// <summary>What was solved last, with the voltage at the battery's terminals as that of the source.</summary>
    internal SolvedCircuit TakeBus()
    {
        if (_hasDrivers)
            _solver.FindDropOuts();
        _valuesAreShared = true;
        return new SolvedCircuit(
            _network,
            _solver,
            _values,
            _wireOhmsInUse,
            _solver.NodeVolts(_network.PlusNode),
            sourceOhms: 0,
            _batteryInUse
        );
    }

    private SolvedCircuit Solved(Setting setting)
    {
        UseBattery(_battery);
        EliminationPlan plan = _solver.Planned();
        if (_solved.TryGetValue(plan, out SolvedCircuit? same))
            return same;
        _solver.SetSource(_supplyVolts, _batteryOhms);
        Require(_solver.Solve(), setting);
        // As warm as the currents through cold wires make them: what warmer wires carry less changes that by little.
        if (_heat.IsAny)
        {
            _wireOhmsInUse = UseWires(
                _heat.Warmed(_values.WireOhms, i => _solver.ConductorAmperes(_network.RunConductors[i]))
            );
            Require(_solver.Solve(warmStart: true), setting);
        }

        if (_hasDrivers)
            _solver.FindDropOuts();
        if (_solved.Count == MostSolved)
            _solved.Clear();
        var solved = new SolvedCircuit(
            _network,
            _solver,
            _values,
            _wireOhmsInUse,
            _supplyVolts,
            _batteryOhms,
            _battery
        );
        _valuesAreShared = true;
        _solved.Add(plan, solved);
        return solved;
    }

    private void Require(SolveStatus status, Setting setting)
    {
        switch (status)
        {
            case SolveStatus.Solved:
                return;
            case SolveStatus.DeadShort:
                throw new NetworkNotSolvedException(
                    $"In the setting '{setting}' {Bike.BatteryPlus} and {Bike.BatteryMinus} are joined "
                        + "without any resistance: a dead short.",
                    setting,
                    isDeadShort: true
                );
            default:
                SolveDiagnostics d = _solver.Diagnostics;
                throw new NetworkNotSolvedException(
                    $"No solution was found in the setting '{setting}': {d.Refusal($"'{PointAt(d.WorstNode)}'")}",
                    setting,
                    isDeadShort: false
                );
        }
    }

    private string PointAt(int node) => node >= 0 && node < _network.Points.Length ? _network.Points[node] : "no point";

    // What was solved keeps the values it was solved with.
    private HarnessValues Changing()
    {
        if (_valuesAreShared)
            _values = _values.Copy();
        _valuesAreShared = false;
        _solved.Clear();
        return _values;
    }

    private static double Checked(ElectricResistance resistance) =>
        resistance.Ohms >= 0
            ? resistance.Ohms
            : throw new ArgumentOutOfRangeException(nameof(resistance), resistance, "Resistance must be zero or more.");

    private double[] UseWires(double[] ohms)
    {
        for (int i = 0; i < _network.RunConductors.Length; i++)
            _solver.SetConductor(_network.RunConductors[i], ohms[i] + _values.JointOhms[i]);
        return ohms;
    }

    private void SetLoad(int lamp)
    {
        _solver.SetLoad(
            _network.Loads[lamp],
            CircuitLoad.Of(_values.Lamps[lamp], _network.Bike.Lamps[lamp].Quantity, _network.Bike.Earth)
        );
        _hasDrivers = _values.HasDrivers;
    }
}
