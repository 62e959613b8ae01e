using System.Runtime.InteropServices;

namespace Lighting.Calc;

/// <summary>Resistance between two points with the battery disconnected: filaments cold, LEDs and ignitions no
/// path.</summary>
/// <remarks>
/// An ohmmeter warms no filament, so that the network is linear. A cold filament has the reference voltage over the
/// reference current over <see cref="FilamentLaw.HotToColdRatio"/>. What an ignition's points or an LED's driver show
/// an ohmmeter is unknown from the lists. The resistance is the voltage that an ampere in at the one point and out at
/// the other leaves between them.
/// </remarks>
internal sealed class ColdNetwork
{
    private readonly FaultCircuit _circuit;
    private readonly FaultyHarness _harness;
    private readonly List<int> _ends = [];
    private readonly List<int> _otherEnds = [];
    private readonly List<double> _siemens = [];
    private DisjointSets _parts;
    private Factor? _factor;
    private double[] _entries = [];
    private (Setting Setting, FaultMember First, FaultMember? Second, int Unplugged)? _state;

    public ColdNetwork(FaultCircuit circuit)
    {
        _circuit = circuit;
        _harness = new FaultyHarness(circuit);
        _parts = new DisjointSets(circuit.ColdNodes);
    }

    /// <summary>Turns to a setting under one or two faults, with what a test has unplugged.</summary>
    public ColdNetwork Set(
        Setting setting,
        in FaultMember first,
        in FaultMember? second = null,
        in TestPlace? place = null
    )
    {
        _state = (setting, first, second, place?.Unplugged ?? -1);
        FaultCircuit circuit = _circuit;
        FaultyHarness harness = _harness;
        (_parts, _factor) = (new DisjointSets(circuit.ColdNodes), null);
        _ends.Clear();
        _otherEnds.Clear();
        _siemens.Clear();
        harness.Set(setting, first, second);
        if (place is { } test)
            harness.Set(test);
        harness.RestRelays();
        foreach (int part in circuit.Parts)
            if (!harness.IsOpen[part])
                Join(
                    circuit.Circuit.ConductorA[part],
                    circuit.Circuit.ConductorB[part],
                    circuit.ListedOhms[part] + harness.AddedOhms[part]
                );
        for (int i = 0; i < circuit.Points.Length; i++)
            Join(i, circuit.FrameNode, harness.ToFrameOhms[i]);
        for (int i = 0; i < circuit.Holders.Length; i++)
            if (harness.HolderOhms[i] > 0)
                Join(
                    circuit.Circuit.ConductorA[circuit.HolderConductors[i]],
                    circuit.Circuit.ConductorB[circuit.HolderConductors[i]],
                    harness.HolderOhms[i]
                );
        if (harness.Bridge is { } bridge)
            Join(bridge.A, bridge.B, FaultCircuit.ShortOhms);
        if (harness.Crossing is >= 0 and var crossing)
        {
            (int one, int other) = circuit.CrossingConductors[crossing];
            JoinCrossed(one, circuit.Crossings[crossing].First);
            JoinCrossed(other, circuit.Crossings[crossing].Second);
        }

        for (int i = 0; i < circuit.Lamps.Length; i++)
        {
            FittedLamp fitted = circuit.Bike.Lamps[
                harness.Lamps[i].ExchangedWith is > 0 and var exchanged ? exchanged - 1 : i
            ];
            if (
                ColdOhms(harness.Lamps[i].Other ?? fitted.Specification, fitted.Quantity - harness.Lamps[i].Dead) is
                { } ohms
            )
                Join(circuit.Circuit.LoadFeed[circuit.Lamps[i]], ReturnOf(i), ohms);
        }

        return this;

        void JoinCrossed(int conductor, int run)
        {
            if (run != harness.UnpluggedRun)
                Join(
                    circuit.Circuit.ConductorA[conductor],
                    circuit.Circuit.ConductorB[conductor],
                    circuit.ListedOhms[circuit.Runs[run]]
                );
        }

        // A holder in order is one with its return point.
        int ReturnOf(int lamp) =>
            circuit.HolderOf[lamp] is >= 0 and var holder && harness.HolderOhms[holder] > 0
                ? circuit.Circuit.LoadReturn[circuit.Lamps[lamp]]
                : circuit.MeasuredParts[lamp].To;
    }

    /// <summary>Cold resistance of all of a lamp's quantity, alone; null if an ohmmeter does not show it.</summary>
    public static double? ColdOhms(LampSpecification lamp, int quantity) =>
        lamp.Type switch
        {
            _ when quantity <= 0 => null,
            LampType.Filament or LampType.Halogen => lamp.ReferenceVoltage.Volts
                / lamp.ReferenceCurrent.Amperes
                / FilamentLaw.HotToColdRatio
                / quantity,
            LampType.Resistor => lamp.ReferenceVoltage.Volts / lamp.ReferenceCurrent.Amperes / quantity,
            _ => null,
        };

    /// <summary>Resistance between two points, with all else joined to them; infinity when nothing joins
    /// them.</summary>
    public double Between(int a, int b)
    {
        if (a == b)
            return 0;
        if (_parts.RootOf(a) != _parts.RootOf(b))
            return double.PositiveInfinity;
        Factor factor = _factor ??= Prepared();
        _entries.CopyTo(factor.Entries, 0);
        Array.Clear(factor.Right);
        int[] slot = _circuit.ColdSlots;
        (factor.Right[slot[a]], factor.Right[slot[b]]) = (1, -1);
        factor.Solve();
        // Without the last digits of the elimination, which would round a figure of the lists the other way.
        return Math.Round(factor.Right[slot[a]] - factor.Right[slot[b]], 12);
    }

    /// <summary>Resistance between the ends of a part.</summary>
    public double Across(MeasuredPart part) => Between(part.From, part.To);

    /// <summary>What an ohmmeter shows in a test of the setting under the faults, on the scale of readings.</summary>
    public double Reading(in TestPlace test) => OhmScale.Logarithm(Ohms(test), _circuit.Options);

    /// <summary>Resistance in a test of the setting under the faults; infinity for none.</summary>
    public double Ohms(in TestPlace test)
    {
        if (_state is { } state && state.Unplugged != test.Unplugged)
            Set(state.Setting, state.First, state.Second, test);
        if (test.To >= 0)
            return Between(test.Index, test.To);
        if (test.IsAlone)
            return Alone(_circuit.MeasuredParts[test.Index]);
        MeasuredPart part = _circuit.MeasuredParts[test.Index];
        return part.Holder >= 0 && _harness.HolderOhms[part.Holder] == 0 ? 0 : Across(part);
    }

    // A fuse without its holder; of a lamp what was put into its place or is dead, but not that it is out.
    private double Alone(MeasuredPart part)
    {
        (Setting setting, FaultMember first, FaultMember? second, _) = _state!.Value;
        _harness.Set(setting, first, second);
        if (part.Lamp < 0)
            return _harness.IsOpen[part.Conductor] ? double.PositiveInfinity : _circuit.ListedOhms[part.Conductor];
        LampFaultChange change = _harness.Lamps[part.Lamp];
        FittedLamp fitted = _circuit.Bike.Lamps[part.Lamp];
        return ColdOhms(change.Other ?? fitted.Specification, fitted.Quantity - change.Dead)
            ?? double.PositiveInfinity;
    }

    private void Join(int a, int b, double ohms)
    {
        if (a == b || double.IsInfinity(ohms))
            return;
        _ends.Add(_circuit.ColdSlots[a]);
        _otherEnds.Add(_circuit.ColdSlots[b]);
        _siemens.Add(1 / Math.Max(FaultCircuit.LeastOhms, ohms));
        _parts.Join(a, b);
    }

    // A conductance from one point of each joined part to the reference node carries no current of an ohmmeter within
    // the part, and makes the matrix positive definite.
    private Factor Prepared()
    {
        int[] slot = _circuit.ColdSlots;
        FactorPattern pattern = FactorPattern.Of(
            slot.Length,
            CollectionsMarshal.AsSpan(_ends),
            CollectionsMarshal.AsSpan(_otherEnds)
        );
        _entries = new double[pattern.PlaceCount];
        for (int i = 0; i < _siemens.Count; i++)
            _entries[pattern.EntryOf(_ends[i], _otherEnds[i])] += _siemens[i];
        for (int node = 0; node < slot.Length; node++)
            if (_parts.RootOf(node) == node)
                _entries[pattern.EntryOf(slot[node], slot.Length)] += 1;
        var factor = new Factor(slot.Length);
        factor.Take(pattern);
        return factor;
    }
}
