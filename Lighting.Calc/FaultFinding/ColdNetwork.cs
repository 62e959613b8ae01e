using Lighting.Calc.Harness;
using Lighting.Calc.Lamps;
using MathNet.Numerics.LinearAlgebra;

namespace Lighting.Calc.FaultFinding;

/// <summary>Ohms between two points with the battery disconnected: filaments cold, LEDs and ignitions no path.</summary>
/// <remarks>
/// An ohmmeter warms no filament, so that the network is linear. A cold filament has the reference volts over the reference
/// amps over <see cref="FilamentLaw.HotToColdRatio"/>. What an ignition's points or an LED's driver show an ohmmeter is not known
/// from the lists. Within each joined part, R = Zii + Zjj − 2·Zij with Z the inverse of its conductance matrix (derived from the nodal equations).
/// </remarks>
internal sealed class ColdNetwork
{
    private readonly double[,] _conductance;
    private readonly FaultCircuit _circuit;
    private readonly int[] _part;
    private Matrix<double>? _inverse;

    public ColdNetwork(FaultCircuit circuit, Setting setting, in FaultMember first, in FaultMember? second)
    {
        _circuit = circuit;
        int n = circuit.Points.Length;
        _conductance = new double[n, n];
        _part = [.. Enumerable.Range(0, n)];
        Bike bike = circuit.Bike;
        for (int i = 0; i < bike.Runs.Length; i++)
            Join(bike.Runs[i].From, bike.Runs[i].To, (bike.Runs[i].WireResistance(bike.WireTemperature) + bike.Runs[i].TotalJointResistance).Ohms + Added(FaultKind.PoorJoint, i, first, second) + Added(FaultKind.PoorGround, i, first, second));
        for (int i = 0; i < bike.Switches.Length; i++)
            if (bike.Switches[i].IsClosed(setting) || Has(FaultKind.ContactNeverOpens, i, first, second))
                Join(bike.Switches[i].From, bike.Switches[i].To, bike.Switches[i].Resistance.Ohms + Added(FaultKind.PoorContact, i, first, second));
        for (int i = 0; i < bike.Fuses.Length; i++)
            if (!Has(FaultKind.FuseBlown, i, first, second) && !Blown(i, first) && !(second is { } s && Blown(i, s)))
                Join(bike.Fuses[i].From!, bike.Fuses[i].To!, FuseTable.ResistanceOf(bike.Fuses[i]).Ohms + Added(FaultKind.PoorFuseHolder, i, first, second));
        for (int i = 0; i < n; i++)
            if (Has(FaultKind.ShortToFrame, i, first, second))
                Join(circuit.Points[i], circuit.Sides.Frame, FaultCircuit.ShortOhms);
        for (int i = 0; i < bike.Lamps.Length; i++)
            if (ColdOhms(i, first, second) is { } ohms)
                Join(bike.Lamps[i].Feed!, bike.Lamps[i].Return!, ohms);
    }

    /// <summary>Cold ohms of all of a lamp's quantity, alone; null where an ohmmeter cannot tell.</summary>
    public static double? ColdOhms(LampSpecification lamp, double quantity) => lamp.Type switch
    {
        _ when quantity <= 0 => null,
        LampType.Filament or LampType.Halogen => lamp.ReferenceVoltage.Volts / lamp.ReferenceCurrent.Amperes / FilamentLaw.HotToColdRatio / quantity,
        LampType.Resistor => lamp.ReferenceVoltage.Volts / lamp.ReferenceCurrent.Amperes / quantity,
        _ => null,
    };

    /// <summary>Ohms between two points; infinity when nothing joins them.</summary>
    public double Between(string one, string other)
    {
        int a = _circuit.NodeOf(one), b = _circuit.NodeOf(other);
        if (a == b)
            return 0;
        if (_part[a] != _part[b])
            return double.PositiveInfinity;
        _inverse ??= Inverse();
        return Math.Max(0, _inverse[a, a] + _inverse[b, b] - 2 * _inverse[a, b]);
    }

    private double? ColdOhms(int lamp, in FaultMember first, in FaultMember? second)
    {
        FittedLamp fitted = _circuit.Bike.Lamps[lamp];
        LampSpecification specification = fitted.Specification;
        double quantity = fitted.Quantity;
        Change(first);
        if (second is { } other)
            Change(other);
        return ColdOhms(specification, quantity);

        void Change(in FaultMember fault)
        {
            if (fault.Family.Part != lamp)
                return;
            if (fault.Family.Kind == FaultKind.LampDead)
                quantity -= fault.Case.Factor;
            else if (fault.Family.Kind == FaultKind.WrongLamp)
                specification = fault.Case.Lamp!;
        }
    }

    private void Join(string from, string to, double ohms)
    {
        int a = _circuit.NodeOf(from), b = _circuit.NodeOf(to);
        if (a == b || double.IsInfinity(ohms))
            return;
        double siemens = 1 / Math.Max(FaultCircuit.LeastOhms, ohms);
        _conductance[a, a] += siemens;
        _conductance[b, b] += siemens;
        _conductance[a, b] -= siemens;
        _conductance[b, a] -= siemens;
        int from1 = _part[a], to1 = _part[b];
        for (int i = 0; i < _part.Length; i++)
            if (_part[i] == from1)
                _part[i] = to1;
    }

    // One point of each joined part is the reference: its row and column are those of the unit matrix.
    private Matrix<double> Inverse()
    {
        int n = _part.Length;
        Matrix<double> matrix = Matrix<double>.Build.DenseOfArray(_conductance);
        for (int root = 0; root < n; root++)
        {
            if (Array.IndexOf(_part, _part[root]) != root)
                continue;
            matrix.ClearRow(root);
            matrix.ClearColumn(root);
            matrix[root, root] = 1;
        }

        Matrix<double> inverse = matrix.Inverse();
        for (int root = 0; root < n; root++)
            if (Array.IndexOf(_part, _part[root]) == root)
                inverse[root, root] = 0;
        return inverse;
    }

    private bool Blown(int fuse, in FaultMember fault) =>
        fault.Family.Kind == FaultKind.ShortToFrame && _circuit.FuseBefore[fault.Family.Part] == fuse;

    private static bool Has(FaultKind kind, int part, in FaultMember first, in FaultMember? second) =>
        Is(first, kind, part) || (second is { } s && Is(s, kind, part));

    private static double Added(FaultKind kind, int part, in FaultMember first, in FaultMember? second) =>
        (Is(first, kind, part) ? first.Case.Ohms : 0) + (second is { } s && Is(s, kind, part) ? s.Case.Ohms : 0);

    private static bool Is(in FaultMember fault, FaultKind kind, int part) => fault.Family.Kind == kind && fault.Family.Part == part;
}
