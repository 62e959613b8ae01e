using MathNet.Numerics.LinearAlgebra;

namespace Lighting.Calc;

/// <summary>Resistance between two points with the battery disconnected: filaments cold, LEDs and ignitions no
/// path.</summary>
/// <remarks>
/// An ohmmeter warms no filament, so that the network is linear. A cold filament has the reference voltage over the
/// reference current over <see cref="FilamentLaw.HotToColdRatio"/>. What an ignition's points or an LED's driver show
/// an ohmmeter is unknown from the lists. Within each joined part, R = Zii + Zjj − 2·Zij with Z the inverse of its
/// conductance matrix (derived from the nodal equations).
/// </remarks>
internal sealed class ColdNetwork
{
    private readonly double[,] _conductance;
    private readonly FaultCircuit _circuit;
    private readonly int[] _part;
    private Matrix<double>? _inverse;

    public ColdNetwork(FaultCircuit circuit, Setting setting, in FaultMember first, in FaultMember? second = null)
    {
        _circuit = circuit;
        int n = circuit.Points.Length;
        _conductance = new double[n, n];
        _part = [.. Enumerable.Range(0, n)];
        var harness = new FaultyHarness(circuit);
        harness.Set(setting, first, second);
        foreach (int part in circuit.Parts)
            if (!harness.IsOpen[part])
                Join(
                    circuit.Circuit.ConductorA[part],
                    circuit.Circuit.ConductorB[part],
                    circuit.ListedOhms[part] + harness.AddedOhms[part]
                );
        for (int i = 0; i < n; i++)
            if (harness.IsShorted[i])
                Join(i, circuit.FrameNode, FaultCircuit.ShortOhms);
        for (int i = 0; i < circuit.Lamps.Length; i++)
        {
            FittedLamp fitted = circuit.Bike.Lamps[i];
            if (
                ColdOhms(harness.Lamps[i].Other ?? fitted.Specification, fitted.Quantity - harness.Lamps[i].Dead) is
                { } ohms
            )
                Join(circuit.Circuit.LoadFeed[circuit.Lamps[i]], circuit.Circuit.LoadReturn[circuit.Lamps[i]], ohms);
        }
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

    /// <summary>Resistance between the ends of a part, with all else joined to them; infinity when nothing joins
    /// them.</summary>
    public double Across(MeasuredPart part)
    {
        (int a, int b) = (part.From, part.To);
        if (a == b)
            return 0;
        if (_part[a] != _part[b])
            return double.PositiveInfinity;
        _inverse ??= Inverse();
        return Math.Max(0, _inverse[a, a] + _inverse[b, b] - 2 * _inverse[a, b]);
    }

    /// <summary>The same on the scale of readings.</summary>
    public double ReadingAcross(MeasuredPart part) => OhmScale.Logarithm(Across(part), _circuit.Options);

    private void Join(int a, int b, double ohms)
    {
        if (a == b || double.IsInfinity(ohms))
            return;
        double siemens = 1 / Math.Max(FaultCircuit.LeastOhms, ohms);
        _conductance[a, a] += siemens;
        _conductance[b, b] += siemens;
        _conductance[a, b] -= siemens;
        _conductance[b, a] -= siemens;
        int from1 = _part[a],
            to1 = _part[b];
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
}
