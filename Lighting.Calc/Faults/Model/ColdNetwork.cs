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
    private readonly FaultCircuit _circuit;
    private readonly FaultyHarness _harness;

    // The conductances by row, in their place then their factor.
    private readonly double[] _matrix;
    private readonly int[] _part;
    private bool _isFactored;

    public ColdNetwork(FaultCircuit circuit)
    {
        _circuit = circuit;
        _harness = new FaultyHarness(circuit);
        _matrix = new double[circuit.ColdNodes * circuit.ColdNodes];
        _part = new int[circuit.ColdNodes];
    }

    /// <summary>Turns to a setting under one or two faults.</summary>
    public ColdNetwork Set(Setting setting, in FaultMember first, in FaultMember? second = null)
    {
        FaultCircuit circuit = _circuit;
        FaultyHarness harness = _harness;
        Array.Clear(_matrix);
        _isFactored = false;
        for (int i = 0; i < _part.Length; i++)
            _part[i] = i;
        harness.Set(setting, first, second);
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
            Join(
                circuit.Circuit.ConductorA[one],
                circuit.Circuit.ConductorB[one],
                circuit.ListedOhms[circuit.Runs[circuit.Crossings[crossing].First]]
            );
            Join(
                circuit.Circuit.ConductorA[other],
                circuit.Circuit.ConductorB[other],
                circuit.ListedOhms[circuit.Runs[circuit.Crossings[crossing].Second]]
            );
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
        if (_part[a] != _part[b])
            return double.PositiveInfinity;
        if (!_isFactored)
            Factor();
        _isFactored = true;
        double[] x = new double[_part.Length];
        (x[a], x[b]) = (1, -1);
        double sum = 0;
        for (int i = Math.Min(a, b); i < x.Length; i++)
        {
            if (x[i] == 0)
                continue;
            Span<double> row = _matrix.AsSpan(i * x.Length, x.Length);
            x[i] /= row[i];
            sum += x[i] * x[i];
            for (int k = i + 1; k < x.Length; k++)
                x[k] -= row[k] * x[i];
        }

        // Without the last digits of the elimination, which would round a figure of the lists the other way.
        return Math.Round(sum, 12);
    }

    /// <summary>Resistance between the ends of a part.</summary>
    public double Across(MeasuredPart part) => Between(part.From, part.To);

    /// <summary>What an ohmmeter shows in a test, on the scale of readings.</summary>
    public double Reading(in TestPlace test) =>
        OhmScale.Logarithm(
            test.To >= 0 ? Between(test.Index, test.To) : Across(_circuit.MeasuredParts[test.Index]),
            _circuit.Options
        );

    private void Join(int a, int b, double ohms)
    {
        if (a == b || double.IsInfinity(ohms))
            return;
        double siemens = 1 / Math.Max(FaultCircuit.LeastOhms, ohms);
        int n = _part.Length;
        _matrix[a * n + a] += siemens;
        _matrix[b * n + b] += siemens;
        _matrix[a * n + b] -= siemens;
        _matrix[b * n + a] -= siemens;
        int from1 = _part[a],
            to1 = _part[b];
        for (int i = 0; i < _part.Length; i++)
            if (_part[i] == from1)
                _part[i] = to1;
    }

    // A conductance from one point of each joined part to earth carries no current of an ohmmeter within the part, and
    // makes the matrix positive definite: A = Uᵀ·U (Cholesky), row by row.
    private void Factor()
    {
        int n = _part.Length;
        for (int root = 0; root < n; root++)
            if (Array.IndexOf(_part, _part[root]) == root)
                _matrix[root * n + root] += 1;
        for (int j = 0; j < n; j++)
        {
            Span<double> row = _matrix.AsSpan(j * n, n);
            double pivot = Math.Sqrt(row[j]);
            for (int i = j; i < n; i++)
                row[i] /= pivot;
            for (int k = j + 1; k < n; k++)
                if (row[k] is not 0 and var factor)
                {
                    Span<double> other = _matrix.AsSpan(k * n, n);
                    for (int i = k; i < n; i++)
                        other[i] -= factor * row[i];
                }
        }
    }
}
