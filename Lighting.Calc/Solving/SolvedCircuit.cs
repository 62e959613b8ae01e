using System.Collections.Immutable;
using System.Runtime.InteropServices;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The numbers of one solution of a harness, and the states of its parts made of them when they are asked
/// for.</summary>
/// <remarks>Most verdicts look at a few lamps and one fuse of each of hundreds of settings. Safe to share between
/// threads: a state made twice is the same.</remarks>
internal sealed class SolvedCircuit
{
    private readonly HarnessNetwork _network;
    private readonly HarnessValues _values;

    // Empty where the bike has no drivers, which alone drop out.
    private readonly bool[] _dropped = [];
    private readonly bool[] _mayDrop = [];
    private readonly double[] _lampVolts;
    private readonly double[] _lampAmperes;
    private readonly double[] _conductorAmperes;
    private readonly double[] _nodeVolts;
    private readonly EliminationPlan _plan;
    private ImmutableArray<LampState> _lamps;
    private ImmutableArray<RunState> _runs;
    private ImmutableArray<FuseState> _fuses;

    /// <summary>Takes the numbers over.</summary>
    /// <param name="network">The harness.</param>
    /// <param name="solver">Its solver, solved.</param>
    /// <param name="values">The values it was solved with, which do not change any more.</param>
    /// <param name="wireOhms">Resistances of its wires, as warm as they were; they do not change any more.</param>
    /// <param name="supplyVolts">Voltage of the source.</param>
    /// <param name="sourceOhms">Its resistance.</param>
    /// <param name="battery">The battery of a harness that is fed apart from it.</param>
    public SolvedCircuit(
        HarnessNetwork network,
        CircuitSolver solver,
        HarnessValues values,
        double[] wireOhms,
        double supplyVolts,
        double sourceOhms,
        in Load battery
    )
    {
        _network = network;
        _plan = solver.Planned();
        _values = values;
        WireOhms = wireOhms;
        SupplyVolts = supplyVolts;
        SourceOhms = sourceOhms;

        SourceAmperes = solver.SourceAmperes;
        BatteryVolts = supplyVolts;
        if (network.IsApart)
        {
            Battery = battery;
            BatteryVolts = solver.LoadVolts(network.Battery);
            BatteryAmperes = solver.LoadAmperes(network.Battery);
            SourceAmperes -= BatteryAmperes;
        }

        BatteryDropVolts = SupplyVolts - solver.NodeVolts(network.PlusNode);
        Bike bike = network.Bike;
        // On a positive-earth bike the feed is the negative side; a lamp's voltage counts from its live to its earth
        // side.
        double sign = bike.EarthSign;
        int lamps = bike.Lamps.Length;
        (_lampVolts, _lampAmperes) = (new double[lamps], new double[lamps]);
        for (int i = 0; i < lamps; i++)
        {
            _lampVolts[i] = sign * solver.LoadVolts(network.Loads[i]);
            _lampAmperes[i] = sign * solver.LoadAmperes(network.Loads[i]);
        }

        if (values.HasDrivers)
        {
            (_dropped, _mayDrop) = (new bool[lamps], new bool[lamps]);
            for (int i = 0; i < lamps; i++)
                (_dropped[i], _mayDrop[i]) = (
                    solver.HasDroppedOut(network.Loads[i]),
                    solver.MayDropOut(network.Loads[i])
                );
        }

        _conductorAmperes = new double[network.Circuit.ConductorCount];
        _nodeVolts = new double[network.Points.Length];
        solver.Copy(_nodeVolts, _conductorAmperes);
        // The solver counts from the source's minus, which of a positive-earth bike is where the generator joins.
        if (network.IsApart && _nodeVolts[HarnessGraph.Minus] is var minus && minus != 0)
            for (int i = 0; i < _nodeVolts.Length; i++)
                _nodeVolts[i] -= minus;
    }

    public Bike Bike => _network.Bike;

    public HarnessGraph Graph => _network.Graph;

    /// <summary>Resistance of each run's wire, as warm as its current makes it.</summary>
    public double[] WireOhms { get; }

    public double SupplyVolts { get; }

    /// <summary>Resistance of the source: the battery's with the engine off, none where the voltage is that at its
    /// terminals.</summary>
    public double SourceOhms { get; }

    /// <summary>Current that the loads take from source and battery together.</summary>
    public double SourceAmperes { get; }

    /// <summary>Index of the point on the live side at which the source is.</summary>
    public int SourcePoint => _network.Source;

    /// <summary>Whether the source is apart from the battery.</summary>
    public bool IsApart => _network.IsApart;

    /// <summary>The battery of a harness that is fed apart from it.</summary>
    public Load Battery { get; }

    /// <summary>Voltage at its terminals; of the source where it is the source.</summary>
    public double BatteryVolts { get; }

    /// <summary>Current into it where it is apart from the source, below zero while it discharges.</summary>
    public double BatteryAmperes { get; }

    public double BatteryDropVolts { get; }

    /// <summary>The elements that carry current and the points they join: equal in settings that differ in dead
    /// switches alone, empty where nothing is on.</summary>
    public string Carrying =>
        string.Join(
            ';',
            [
                .. _plan.LiveConductors.Select(c =>
                    (c, _plan.Anchor[_network.Circuit.ConductorA[c]], _plan.Anchor[_network.Circuit.ConductorB[c]])
                ),
                .. _plan.LiveLoads.Select(l =>
                    (
                        _network.Circuit.ConductorCount + l,
                        _plan.Anchor[_network.Circuit.LoadFeed[l]],
                        _plan.Anchor[_network.Circuit.LoadReturn[l]]
                    )
                ),
            ]
        );

    public double RunAmperes(int run) => Math.Abs(_conductorAmperes[_network.RunConductors[run]]);

    /// <summary>Voltage lost in a run's wire and in its joints, each of the sign of its current.</summary>
    public (double Wire, double Joints) RunDropVolts(int run)
    {
        double amperes = _conductorAmperes[_network.RunConductors[run]];
        return (amperes * WireOhms[run], amperes * _values.JointOhms[run]);
    }

    /// <summary>Amps of a contact, of its sign; 0 without runs, when no contact is in the circuit.</summary>
    public double ContactAmperes(int contact) =>
        contact < _network.ContactConductors.Length ? _conductorAmperes[_network.ContactConductors[contact]] : 0;

    /// <summary>Voltage lost in a contact, of the sign of its current.</summary>
    public double ContactDropVolts(int contact) => ContactAmperes(contact) * _values.ContactOhms[contact];

    public double FuseAmperes(int fuse) => Math.Abs(_conductorAmperes[_network.FuseConductors[fuse]]);

    /// <summary>Voltage lost in a fuse, of the sign of its current.</summary>
    public double FuseDropVolts(int fuse) => _conductorAmperes[_network.FuseConductors[fuse]] * _values.FuseOhms[fuse];

    /// <summary>Amps of a lamp, of the sign of its voltage.</summary>
    public double LampAmperes(int lamp) => _lampAmperes[lamp];

    /// <summary>Voltage of a lamp, live side against earth side; 0 for one that is not connected.</summary>
    public double LampVolts(int lamp) => _network.Bike.HasNetwork || _lampAmperes[lamp] != 0 ? _lampVolts[lamp] : 0;

    /// <summary>Share of the source voltage that does not reach a lamp; null when it is not fed.</summary>
    public double? LampDrop(int lamp) =>
        SupplyVolts > 0 && LampVolts(lamp) > 0.01 * SupplyVolts ? 1 - LampVolts(lamp) / SupplyVolts : null;

    /// <summary>Whether a lamp is fed and its driver cannot hold its power.</summary>
    public bool LampDroppedOut(int lamp) => _dropped.Length > 0 && _dropped[lamp] && LampDrop(lamp) is not null;

    /// <summary>Whether a lit driver may as well be dark.</summary>
    public bool LampMayDropOut(int lamp) => _mayDrop.Length > 0 && _mayDrop[lamp] && LampDrop(lamp) is not null;

    /// <summary>Whether it has as many parts as a bike.</summary>
    public bool IsOf(Bike bike) =>
        bike.Fuses.Length == _network.FuseConductors.Length
        && bike.Runs.Length == _network.RunConductors.Length
        && bike.Lamps.Length == _lampAmperes.Length;

    public ImmutableArray<LampState> Lamps => _lamps.IsDefault ? _lamps = Made(_lampVolts.Length, LampOf) : _lamps;

    public ImmutableArray<RunState> Runs =>
        _runs.IsDefault ? _runs = Made(_network.RunConductors.Length, RunOf) : _runs;

    public ImmutableArray<FuseState> Fuses =>
        _fuses.IsDefault ? _fuses = Made(_network.FuseConductors.Length, FuseOf) : _fuses;

    public ImmutableArray<ContactState> ContactsWith(ContactSet closed) => Made(_network.ContactConductors.Length, i =>
        {
            double amperes = closed.Has(i) ? ContactAmperes(i) : 0;
            return new ContactState(
                _network.Bike.Switches[i],
                closed.Has(i),
                ElectricCurrent.FromAmperes(amperes),
                ElectricPotential.FromVolts(amperes * _values.ContactOhms[i])
            );
        });

    /// <summary>The points with some contacts closed: those that no current reaches have the voltage of the point they
    /// are joined to, 0 V where there is none.</summary>
    public ImmutableArray<NodeVoltage> PointsWith(ContactSet closed)
    {
        Circuit circuit = _network.Circuit;
        double[] volts = [.. _nodeVolts];
        bool[] known = new bool[volts.Length];
        for (int v = 0; v < known.Length; v++)
            known[v] = _plan.IsLive(v);
        bool[] open = new bool[circuit.ConductorCount];
        for (int i = 0; i < open.Length; i++)
            open[i] = _plan.Key.Conductor(i) == Link.Open;
        for (int i = 0; i < _network.ContactConductors.Length; i++)
            open[_network.ContactConductors[i]] = !closed.Has(i) || double.IsPositiveInfinity(_values.ContactOhms[i]);
        // No current flows outside the live part: voltage spreads unchanged over what is joined to it.
        for (bool spreads = true; spreads;)
        {
            spreads = false;
            for (int c = 0; c < open.Length; c++)
                if (!open[c])
                    spreads |= Spread(circuit.ConductorA[c], circuit.ConductorB[c]);
            for (int l = 0; l < circuit.LoadCount; l++)
                if (_plan.Key.LoadConnected(l))
                    spreads |= Spread(circuit.LoadFeed[l], circuit.LoadReturn[l]);
        }

        for (int v = 0; v < volts.Length; v++)
            if (!known[v])
                volts[v] = 0;
        return Made(volts.Length, i => new NodeVoltage(_network.Points[i], ElectricPotential.FromVolts(volts[i])));

        bool Spread(int a, int b)
        {
            if (known[a] == known[b])
                return false;
            (int from, int to) = known[a] ? (a, b) : (b, a);
            (volts[to], known[to]) = (volts[from], true);
            return true;
        }
    }

    private LampState LampOf(int index)
    {
        FittedLamp lamp = _network.Bike.Lamps[index];
        LampSpecification specification = _values.Lamps[index];
        double? drop = LampDrop(index);
        return new LampState
        {
            Lamp = ReferenceEquals(lamp.Specification, specification)
                ? lamp
                : lamp with
                {
                    Specification = specification,
                },
            Voltage = ElectricPotential.FromVolts(LampVolts(index)),
            Current = ElectricCurrent.FromAmperes(_lampAmperes[index]),
            Drop = drop is { } share ? Ratio.FromDecimalFractions(share) : null,
            DroppedOut = LampDroppedOut(index),
            MayDropOut = LampMayDropOut(index),
        };
    }

    private RunState RunOf(int index)
    {
        (double wire, double joints) = RunDropVolts(index);
        return new RunState(
            _network.Bike.Runs[index],
            ElectricCurrent.FromAmperes(_conductorAmperes[_network.RunConductors[index]]),
            ElectricPotential.FromVolts(wire),
            ElectricPotential.FromVolts(joints),
            ElectricResistance.FromOhms(WireOhms[index] + _values.JointOhms[index])
        );
    }

    private FuseState FuseOf(int index)
    {
        double amperes = FuseAmperes(index);
        return new FuseState(
            _network.Bike.Fuses[index],
            ElectricCurrent.FromAmperes(amperes),
            ElectricPotential.FromVolts(amperes * _values.FuseOhms[index])
        );
    }

    private static ImmutableArray<T> Made<T>(int count, Func<int, T> make)
    {
        var made = new T[count];
        for (int i = 0; i < count; i++)
            made[i] = make(i);
        return ImmutableCollectionsMarshal.AsImmutableArray(made);
    }
}
