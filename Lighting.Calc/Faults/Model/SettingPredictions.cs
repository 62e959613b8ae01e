namespace Lighting.Calc;

/// <summary>What every test in one setting reads under every fault of every severity, each solved with the instrument's
/// own load.</summary>
internal sealed class SettingPredictions
{
    private const double SupplyStep = 0.02;
    private const double SoftVolts = 0.002;

    private readonly FaultModel _model;
    private readonly Setting _setting;
    private readonly Column[] _meter;
    private readonly Column[] _eye;
    private readonly Column?[] _testLamp;
    private readonly Column?[] _ammeter;
    private readonly TestPlace[] _meters;
    private readonly SettingLooks _looks;
    private readonly Lock _lock = new();
    private Column[]? _ohmmeter;
    private bool _isSolved;

    public SettingPredictions(FaultModel model, Setting setting)
    {
        _model = model;
        _setting = setting;
        FaultCircuit circuit = model.Circuit;
        _meter = [.. circuit.Points.Select(_ => Column.Of(model.Members.Length, circuit.Supply, withDraws: true))];
        _eye = [.. circuit.Lamps.Select(_ => Column.Of(model.Members.Length, circuit.Supply, withDraws: false))];
        _testLamp = new Column?[circuit.Points.Length];
        _ammeter = new Column?[circuit.Fuses.Length];
        _meters = [.. circuit.Points.Select((_, p) => new TestPlace(setting, Instrument.Meter, p))];
        _looks = new SettingLooks(model, setting);
    }

    /// <summary>The predictions of a test of this setting.</summary>
    public Column Of(Instrument instrument, int index, CancellationToken cancellationToken)
    {
        lock (_lock)
        {
            if (instrument != Instrument.Ohmmeter)
                SolveOnce(cancellationToken);
            switch (instrument)
            {
                case Instrument.Meter:
                    return _meter[index];
                case Instrument.Visual:
                    return _eye[index];
                case Instrument.TestLamp:
                    return _testLamp[index] ?? TestLamp([index], cancellationToken)[0];
                case Instrument.Ammeter:
                    return _ammeter[index] ??= Ammeter(index, cancellationToken);
                default:
                    return (_ohmmeter ??= Ohmmeter(cancellationToken))[index];
            }
        }
    }

    /// <summary>Solves the test lamp on every point, which is quicker at once than one by one.</summary>
    public void TakeAllTestLamps(CancellationToken cancellationToken)
    {
        lock (_lock)
        {
            SolveOnce(cancellationToken);
            int[] missing = [.. Enumerable.Range(0, _testLamp.Length).Where(p => _testLamp[p] is null)];
            if (missing.Length > 0)
                TestLamp(missing, cancellationToken);
        }
    }

    /// <summary>What tests read under two faults at once.</summary>
    /// <param name="solver">The solver.</param>
    /// <param name="first">A fault.</param>
    /// <param name="second">Another.</param>
    /// <param name="tests">The tests, all in this setting.</param>
    /// <param name="isExact">Whether a meter's own load is put in where it counts.</param>
    public double[] Read(
        FaultSolver solver,
        in FaultMember first,
        in FaultMember second,
        TestPlace[] tests,
        bool isExact
    )
    {
        var values = new double[tests.Length];
        if (tests.Any(t => t.Instrument != Instrument.Ohmmeter))
        {
            solver.Set(_setting, first, second);
            solver.Solve();
            for (int i = 0; i < values.Length; i++)
                if (tests[i].Instrument is Instrument.Meter)
                    values[i] = solver.Volts(tests[i].Index);
                else if (tests[i].Instrument is Instrument.Visual)
                    values[i] = _looks.Lamp(solver, tests[i].Index);
            if (isExact)
                TakeSoftPoints(solver, tests, values);
        }

        ColdNetwork? cold = null;
        for (int i = 0; i < values.Length; i++)
            switch (tests[i].Instrument)
            {
                case Instrument.TestLamp:
                    solver.Probe(tests[i].Index, testLamp: true);
                    solver.Solve();
                    values[i] = _looks.TestLamp(solver);
                    solver.Probe(-1, testLamp: false);
                    break;
                case Instrument.Ammeter:
                    solver.Set(_setting, first, second, ammeterFor: tests[i].Index);
                    solver.Solve();
                    values[i] = solver.FuseAmperes(tests[i].Index);
                    solver.Set(_setting, first, second);
                    break;
                case Instrument.Ohmmeter:
                    cold ??= new ColdNetwork(_model.Circuit, _setting, first, second);
                    values[i] = cold.ReadingAcross(_model.Parts[tests[i].Index]);
                    break;
            }

        return values;
    }

    // An ohmmeter needs none of this. A cancelled calculation leaves columns half filled, which the next fills again.
    private void SolveOnce(CancellationToken cancellationToken)
    {
        if (_isSolved)
            return;
        _model.ForEachMember(Solve, cancellationToken);
        _isSolved = true;
    }

    private void Solve(FaultSolver solver, int m)
    {
        int points = _meter.Length;
        solver.Set(_setting, _model.Members[m]);
        solver.Solve();
        double[] looks = [.. _eye.Select((_, l) => _looks.Lamp(solver, l))];
        double[] volts = [.. _meter.Select((_, p) => solver.Volts(p))];
        TakeSoftPoints(solver, _meters, volts);
        Fill(
            solver,
            m,
            [.. _meter, .. _eye],
            [.. volts.Concat(looks).Select(v => (double)(float)v)],
            i => i < points ? solver.Volts(i) : _looks.Lamp(solver, i - points)
        );
    }

    // A severity's row of columns: the values, and their change with the supply, the engine's speed (not the same at
    // any two readings) and the draws of the tolerances.
    private void Fill(
        FaultSolver solver,
        int m,
        Column[] columns,
        double[] values,
        Func<int, double> read,
        int ammeterFor = -1
    )
    {
        FaultMember member = _model.Members[m];
        for (int i = 0; i < columns.Length; i++)
            columns[i].Begin(m, values[i]);
        solver.Set(_setting, member, supplyFactor: 1 + SupplyStep, ammeterFor: ammeterFor);
        solver.Solve();
        for (int i = 0; i < columns.Length; i++)
            if (columns[i].Draws.Length > 0)
                columns[i].Battery[m] = (float)((read(i) - values[i]) / SupplyStep);
        if (_model.Circuit.Supply.Coil is not null)
        {
            solver.Set(
                _setting,
                member,
                ammeterFor: ammeterFor,
                speedFactor: 1 + _model.Circuit.Options.SpeedTolerance.DecimalFractions
            );
            solver.Solve();
            for (int i = 0; i < columns.Length; i++)
                columns[i].Own[m] = (float)Math.Abs(read(i) - values[i]);
        }

        for (int draw = 0; draw < ToleranceDraws.Count; draw++)
        {
            solver.Set(_setting, member, draw: draw, ammeterFor: ammeterFor);
            solver.Solve();
            for (int i = 0; i < columns.Length; i++)
                columns[i].AddDraw(m, draw, read(i));
        }

        foreach (Column column in columns)
            column.Sigma[m] = (float)Math.Sqrt(column.Sigma[m] / ToleranceDraws.Count);
    }

    // Where a meter's own load moves the voltage (behind an LED that blocks, behind kilohms), it is put there alone.
    private void TakeSoftPoints(FaultSolver solver, IReadOnlyList<TestPlace> meters, double[] volts)
    {
        solver.LeakAsMeters(true);
        solver.Solve();
        List<int>? soft = null;
        for (int i = 0; i < volts.Length; i++)
            if (
                meters[i].Instrument is Instrument.Meter
                && Math.Abs(solver.Volts(meters[i].Index) - volts[i]) > SoftVolts
            )
                (soft ??= []).Add(i);
        solver.LeakAsMeters(false);
        foreach (int i in soft ?? [])
        {
            solver.Probe(meters[i].Index, testLamp: false);
            solver.Solve();
            volts[i] = solver.Volts(meters[i].Index);
        }

        solver.Probe(-1, testLamp: false);
    }

    private Column[] TestLamp(int[] points, CancellationToken cancellationToken)
    {
        Column[] columns =
        [
            .. points.Select(_ => Column.Of(_model.Members.Length, _model.Circuit.Supply, withDraws: false)),
        ];
        FaultCircuit circuit = _model.Circuit;
        _model.ForEachMember(TakeAll, cancellationToken);
        for (int i = 0; i < points.Length; i++)
            _testLamp[points[i]] = columns[i];
        return columns;

        void TakeAll(FaultSolver solver, int m)
        {
            solver.Set(_setting, _model.Members[m]);
            for (int i = 0; i < points.Length; i++)
            {
                float volts = _meter[points[i]].Value[m];
                columns[i].Value[m] = (float)LookScale.NoLight;
                // A point that gives an idle meter almost zero gives a lamp no more.
                if (volts < 0.05 * circuit.Supply.FullVolts)
                    continue;
                solver.Probe(points[i], testLamp: true);
                solver.Solve();
                columns[i].Value[m] = (float)_looks.TestLamp(solver);
                columns[i].Sigma[m] = (float)
                    Math.Min(1.5, FilamentLaw.LightExponent * _meter[points[i]].Sigma[m] / volts);
                if (columns[i].Own.Length > 0)
                    columns[i].Own[m] = (float)
                        Math.Min(1.5, FilamentLaw.LightExponent * _meter[points[i]].Own[m] / volts);
            }

            solver.Probe(-1, testLamp: false);
        }
    }

    private Column Ammeter(int fuse, CancellationToken cancellationToken)
    {
        var column = Column.Of(_model.Members.Length, _model.Circuit.Supply, withDraws: true);
        _model.ForEachMember(
            (solver, m) =>
            {
                solver.Set(_setting, _model.Members[m], ammeterFor: fuse);
                solver.Solve();
                Fill(solver, m, [column], [solver.FuseAmperes(fuse)], _ => solver.FuseAmperes(fuse), fuse);
            },
            cancellationToken
        );
        return column;
    }

    private Column[] Ohmmeter(CancellationToken cancellationToken)
    {
        Column[] columns = [.. _model.Parts.Select(_ => new Column(_model.Members.Length))];
        Parallel.For(
            0,
            _model.Members.Length,
            new ParallelOptions { CancellationToken = cancellationToken },
            m =>
            {
                var network = new ColdNetwork(_model.Circuit, _setting, _model.Members[m]);
                for (int i = 0; i < columns.Length; i++)
                {
                    columns[i].Value[m] = (float)network.ReadingAcross(_model.Parts[i]);
                    columns[i].Sigma[m] = (float)OhmScale.Sigma(columns[i].Value[m], isLamp: _model.Parts[i].Lamp >= 0);
                }
            }
        );
        return columns;
    }
}
