using System.Collections.Immutable;
using System.Globalization;
using Lighting.Calc.Harness;
using Lighting.Calc.Lamps;
using UnitsNet;

namespace Lighting.Calc.Network;

/// <summary>Solves one harness again and again, with changed supply, resistances or lamps, without rebuilding it.</summary>
/// <remarks>For one thread at a time; the harness itself is not changed.</remarks>
public sealed class HarnessSolver
{
    /// <summary>Operating points kept of one set of values.</summary>
    private const int MostSolved = 256;

    private readonly HarnessNetwork _network;
    private readonly CircuitSolver _solver;
    private readonly LampSpecification[] _lamps;
    private readonly double[] _wireOhms;
    private readonly double[] _jointOhms;
    private readonly double[] _contactOhms;
    private readonly double[] _fuseOhms;
    // What was solved with the values as they are; settings that differ in dead contacts only need no solution of their own.
    private readonly Dictionary<LivePart, OperatingPoint> _solved = [];
    private readonly bool[] _closed;
    private bool _hasDrivers;
    private double _supplyVolts;
    private double _batteryOhms;

    internal HarnessSolver(HarnessNetwork network)
    {
        _network = network;
        _solver = new CircuitSolver(network.Circuit);
        Bike bike = network.Bike;
        _closed = new bool[bike.Switches.Length];
        _lamps = [.. bike.Lamps.Select(l => l.Specification)];
        _wireOhms = [.. bike.Runs.Select(r => r.WireResistance(bike.WireTemperature).Ohms)];
        _jointOhms = [.. bike.Runs.Select(r => r.TotalJointResistance.Ohms)];
        _contactOhms = [.. bike.Switches.Select(s => s.Resistance.Ohms)];
        // Without runs drops are not included, the fuse's own as little as any wire's.
        _fuseOhms = [.. bike.Fuses.Select(f => bike.HasNetwork ? FuseTable.ResistanceOf(f).Ohms : 0)];
        for (int i = 0; i < _fuseOhms.Length; i++)
            _solver.SetConductor(network.FuseConductors[i], _fuseOhms[i]);
        for (int i = 0; i < network.RunConductors.Length; i++)
            _solver.SetConductor(network.RunConductors[i], _wireOhms[i] + _jointOhms[i]);
        for (int i = 0; i < _lamps.Length; i++)
            SetLoad(i);
        _supplyVolts = bike.ChargingVoltage.Volts;
        _batteryOhms = bike.BatteryResistance.Ohms;
    }

    /// <summary>Sets the volts of the source before the battery's resistance.</summary>
    /// <param name="voltage">Zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The volts are below zero.</exception>
    public void SetSupply(ElectricPotential voltage)
    {
        double volts = voltage.Volts >= 0 ? voltage.Volts : throw new ArgumentOutOfRangeException(nameof(voltage), voltage, "The supply volts are zero or more.");
        if (volts == _supplyVolts)
            return;
        _solved.Clear();
        _supplyVolts = volts;
    }

    /// <summary>Sets the battery's resistance.</summary>
    /// <param name="resistance">Zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The resistance is below zero.</exception>
    public void SetBatteryResistance(ElectricResistance resistance)
    {
        _batteryOhms = Checked(resistance);
        _solved.Clear();
    }

    /// <summary>Sets the resistance of a run: its wire and its joints.</summary>
    /// <param name="run">Index in the bike's runs.</param>
    /// <param name="wire">Resistance of the wire, zero or more.</param>
    /// <param name="joints">Resistance of its joints together, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such run, or a resistance is below zero.</exception>
    public void SetRun(int run, ElectricResistance wire, ElectricResistance joints)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(run);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(run, _wireOhms.Length);
        _wireOhms[run] = Checked(wire);
        _jointOhms[run] = Checked(joints);
        _solved.Clear();
        _solver.SetConductor(_network.RunConductors[run], _wireOhms[run] + _jointOhms[run]);
    }

    /// <summary>Sets the resistance of a contact when it is closed.</summary>
    /// <param name="contact">Index in the bike's switch contacts.</param>
    /// <param name="resistance">Zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such contact, or the resistance is below zero.</exception>
    public void SetContact(int contact, ElectricResistance resistance)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(contact);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(contact, _contactOhms.Length);
        _contactOhms[contact] = Checked(resistance);
        _solved.Clear();
    }

    /// <summary>Sets the resistance of a fuse.</summary>
    /// <param name="fuse">Index in the bike's fuses.</param>
    /// <param name="resistance">Zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such fuse, or the resistance is below zero.</exception>
    public void SetFuse(int fuse, ElectricResistance resistance)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(fuse);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(fuse, _fuseOhms.Length);
        _fuseOhms[fuse] = Checked(resistance);
        _solved.Clear();
        _solver.SetConductor(_network.FuseConductors[fuse], _fuseOhms[fuse]);
    }

    /// <summary>Puts another lamp in a fitted lamp's place.</summary>
    /// <param name="lamp">Index in the bike's lamps.</param>
    /// <param name="specification">What takes its place.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such lamp.</exception>
    public void SetLamp(int lamp, LampSpecification specification)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(lamp);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(lamp, _lamps.Length);
        _lamps[lamp] = specification;
        _solved.Clear();
        SetLoad(lamp);
    }

    /// <summary>Solves a setting.</summary>
    /// <param name="setting">The setting; a switch it does not name counts as off.</param>
    /// <returns>Volts at every point and current in every part; of several states the bike can hold, the bright one.</returns>
    /// <exception cref="NetworkNotSolvedException">The source is shorted without any resistance, or no solution was found.</exception>
    public OperatingPoint Solve(Setting setting)
    {
        Bike bike = _network.Bike;
        for (int i = 0; i < _network.ContactConductors.Length; i++)
        {
            _closed[i] = bike.Switches[i].IsClosed(setting);
            _solver.SetConductor(_network.ContactConductors[i], _closed[i] ? _contactOhms[i] : double.PositiveInfinity);
        }

        if (!bike.HasNetwork)
            for (int i = 0; i < _lamps.Length; i++)
                _solver.SetLoadConnected(_network.Loads[i], bike.Lamps[i].LitWhen.Holds(setting));
        Plan plan = _solver.Planned();
        if (_solved.TryGetValue(plan.LivePart, out OperatingPoint? same))
            return WithSameCurrents(same, setting, plan);
        _solver.SetSource(_supplyVolts, _batteryOhms);
        switch (_solver.Solve())
        {
            case SolveStatus.Solved:
                if (_hasDrivers)
                    _solver.FindDropOuts();
                OperatingPoint result = Result(setting);
                if (_solved.Count == MostSolved)
                    _solved.Clear();
                _solved[plan.LivePart] = result;
                return result;
            case SolveStatus.DeadShort:
                throw new NetworkNotSolvedException($"In the setting '{setting}' {Bike.BatteryPlus} and {Bike.BatteryMinus} are joined without any resistance: a dead short.", setting, isDeadShort: true);
            default:
                SolveDiagnostics d = _solver.Diagnostics;
                throw new NetworkNotSolvedException(string.Create(CultureInfo.InvariantCulture, $"No solution was found in the setting '{setting}': {d.Iterations} iterations, worst at '{PointAt(d.WorstNode)}' with {d.WorstResidualAmperes:G3} A left over; tried {d.Tried}."), setting, isDeadShort: false);
        }
    }

    private string PointAt(int node) => node >= 0 && node < _network.Points.Length ? _network.Points[node] : "no point";

    private static double Checked(ElectricResistance resistance) => resistance.Ohms >= 0
        ? resistance.Ohms
        : throw new ArgumentOutOfRangeException(nameof(resistance), resistance, "A resistance is zero or more.");

    private void SetLoad(int lamp)
    {
        _solver.SetLoad(_network.Loads[lamp], CircuitLoad.Of(_lamps[lamp], _network.Bike.Lamps[lamp].Quantity, _network.Bike.Earth));
        _hasDrivers = _lamps.Any(l => l.Type == LampType.Led);
    }

    private OperatingPoint Result(Setting setting)
    {
        Bike bike = _network.Bike;
        return new OperatingPoint
        {
            Setting = setting,
            SupplyVoltage = ElectricPotential.FromVolts(_supplyVolts),
            TotalCurrent = ElectricCurrent.FromAmperes(_solver.SourceAmperes),
            BatteryDrop = ElectricPotential.FromVolts(_supplyVolts - _solver.NodeVolts(_network.PlusNode)),
            Points = [.. _network.Points.Select((p, i) => new PointState(p, ElectricPotential.FromVolts(_solver.NodeVolts(i))))],
            Lamps = [.. bike.Lamps.Select((l, i) => StateOf(l, i))],
            Runs = [.. bike.Runs.Select((r, i) => StateOf(r, i))],
            Contacts = [.. bike.Switches.Select((s, i) => StateOf(s, i, setting))],
            Fuses = [.. bike.Fuses.Select((f, i) => StateOf(f, i))],
        };
    }

    // Only dead contacts stand otherwise, and points that no current reaches may hang elsewhere.
    private OperatingPoint WithSameCurrents(OperatingPoint same, Setting setting, Plan plan)
    {
        var points = ImmutableArray.CreateBuilder<PointState>(same.Points.Length);
        for (int i = 0; i < same.Points.Length; i++)
        {
            ElectricPotential voltage = same.Points[plan.Anchor[i]].Voltage;
            points.Add(voltage.Volts == same.Points[i].Voltage.Volts ? same.Points[i] : new PointState(_network.Points[i], voltage));
        }

        var contacts = ImmutableArray.CreateBuilder<ContactState>(same.Contacts.Length);
        for (int i = 0; i < same.Contacts.Length; i++)
            contacts.Add(_closed[i] == same.Contacts[i].Closed ? same.Contacts[i] : new ContactState(same.Contacts[i].Contact, _closed[i], ElectricCurrent.Zero, ElectricPotential.Zero));
        return same with { Setting = setting, Points = points.MoveToImmutable(), Contacts = contacts.MoveToImmutable() };
    }

    private LampState StateOf(FittedLamp lamp, int index)
    {
        // On a positive-earth bike the feed is the negative side; a lamp's volts count from its live to its earth side.
        double sign = _network.Bike.Earth == Earth.Negative ? 1 : -1;
        int load = _network.Loads[index];
        double volts = sign * _solver.LoadVolts(load), amperes = sign * _solver.LoadAmperes(load);
        bool connected = _network.Bike.HasNetwork || amperes != 0;
        var voltage = ElectricPotential.FromVolts(connected ? volts : 0);
        bool fed = _supplyVolts > 0 && connected && voltage.Volts > 0.01 * _supplyVolts;
        return new LampState
        {
            Lamp = lamp with { Specification = _lamps[index] },
            Voltage = voltage,
            Current = ElectricCurrent.FromAmperes(amperes),
            Power = Power.FromWatts(volts * amperes),
            RelativeLight = _lamps[index].RelativeLightAt(voltage),
            Drop = fed ? Ratio.FromDecimalFractions(1 - voltage.Volts / _supplyVolts) : null,
            DroppedOut = fed && _solver.HasDroppedOut(load),
            MayDropOut = fed && _hasDrivers && _solver.MayDropOut(load),
        };
    }

    private RunState StateOf(Run run, int index)
    {
        double amperes = _solver.ConductorAmperes(_network.RunConductors[index]);
        return new RunState(
            run,
            ElectricCurrent.FromAmperes(amperes),
            ElectricPotential.FromVolts(amperes * _wireOhms[index]),
            ElectricPotential.FromVolts(amperes * _jointOhms[index]),
            ElectricResistance.FromOhms(_wireOhms[index] + _jointOhms[index]));
    }

    private ContactState StateOf(SwitchContact contact, int index, Setting setting)
    {
        bool closed = contact.IsClosed(setting);
        double amperes = closed ? _solver.ConductorAmperes(_network.ContactConductors[index]) : 0;
        return new ContactState(contact, closed, ElectricCurrent.FromAmperes(amperes), ElectricPotential.FromVolts(amperes * _contactOhms[index]));
    }

    private FuseState StateOf(Fuse fuse, int index)
    {
        int conductor = _network.FuseConductors[index];
        double amperes = Math.Abs(_solver.ConductorAmperes(conductor));
        return new FuseState(fuse, ElectricCurrent.FromAmperes(amperes), ElectricPotential.FromVolts(amperes * _fuseOhms[index]));
    }
}
