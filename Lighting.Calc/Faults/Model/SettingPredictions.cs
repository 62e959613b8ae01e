namespace Lighting.Calc;

/// <summary>What every test in one setting reads under every fault of every severity, each solved with the instrument's
/// own load.</summary>
/// <remarks>
/// A fault is solved when a test first needs it, then kept: voltages and looks with their tolerances, other instruments
/// one by one.
/// </remarks>
internal sealed class SettingPredictions
{
    private const double SupplyStep = 0.02;
    private const double SoftVolts = 0.002;

    // A point that falls by less than this share through twice the resistance of a test lamp is stiff: the lamp's light
    // is then known well enough to call it lit. Through less a cold filament in the way would look stiff as well.
    private const double StiffShare = 0.06;

    private readonly FaultModel _model;
    private readonly FaultCircuit _circuit;
    private readonly Setting _setting;
    private readonly TestSupply _supply;
    private readonly Column[] _meter;
    private readonly Column[] _eye;
    private readonly TestPlace[] _meters;
    private readonly bool[][] _isSoft;
    private readonly bool[] _isIdleKnown;
    private readonly bool[] _isSolved;
    private readonly Dictionary<TestPlace, Other> _others = [];
    private readonly SettingLooks _looks;
    private CircuitState? _healthy;

    public SettingPredictions(FaultModel model, Setting setting, double? engineRpm)
    {
        _model = model;
        _circuit = model.Circuit;
        _setting = setting;
        _supply = _circuit.SupplyAt(engineRpm);
        int count = model.Members.Length;
        _meter = [.. _circuit.Points.Select(_ => Column.Of(count, _supply, withDraws: true))];
        _eye = [.. _circuit.Lamps.Select(_ => Column.Of(count, _supply, withDraws: false))];
        _meters =
        [
            .. _circuit.Points.Select((_, p) => new TestPlace(setting, Instrument.Meter, p, EngineRpm: engineRpm)),
        ];
        _isSoft = [.. _circuit.Points.Select(_ => new bool[count])];
        _isIdleKnown = new bool[count];
        _isSolved = new bool[count];
        _looks = new SettingLooks(model, setting, _supply);
    }

    /// <summary>The column of a test that was prepared.</summary>
    public Column Known(in TestPlace test) =>
        !IsPlain(test) ? _others[test].Column
        : test.Instrument == Instrument.Meter ? _meter[test.Index]
        : _eye[test.Index];

    /// <summary>Idle voltages and looks alone, of every severity.</summary>
    public (Column[] Meter, Column[] Eye) Idle(CancellationToken cancellationToken)
    {
        if (!_isIdleKnown[0])
            _model.ForEach(1, (solver, _) => SolveIdle(solver, 0), cancellationToken);
        int[] missing = [.. _model.EveryMember.Where(m => !_isIdleKnown[m])];
        _model.ForEach(
            missing.Length,
            (solver, i) =>
            {
                if (!TakesHealthy(solver, missing[i]))
                    SolveIdle(solver, missing[i]);
            },
            cancellationToken
        );
        return (_meter, _eye);
    }

    /// <summary>What is not yet known of some tests, all in this setting.</summary>
    /// <param name="tests">The tests.</param>
    /// <param name="members">The severities.</param>
    public SettingWork Missing(IEnumerable<TestPlace> tests, int[] members)
    {
        TestPlace[] asked = [.. tests];
        Other[] others = [.. asked.Where(t => !IsPlain(t)).Select(Entry)];
        bool needsPlain = Array.Exists(asked, IsOfPlain);
        return new SettingWork(
            _isSolved[0] && Array.TrueForAll(others, o => o.Has[0]) ? [] : [0],
            [.. members.Where(m => needsPlain && !_isSolved[m] || Array.Exists(others, o => !o.Has[m]))],
            (solver, m) => Solve(solver, m, m == 0 || needsPlain, others)
        );
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
        solver.Supply = _supply;
        if (Array.Exists(tests, IsPlainOrAcross))
        {
            solver.Set(_setting, first, second);
            solver.Probe(-1, testLamp: false);
            solver.Solve();
            for (int i = 0; i < values.Length; i++)
                if (IsPlainOrAcross(tests[i]))
                    values[i] =
                        tests[i].Instrument == Instrument.Meter
                            ? solver.Volts(tests[i])
                            : _looks.Lamp(solver, tests[i].Index);
            if (isExact)
                TakeSoftPoints(solver, tests, values, null, 0);
        }

        ColdNetwork? cold = null;
        for (int i = 0; i < values.Length; i++)
            if (!IsPlainOrAcross(tests[i]))
                values[i] =
                    tests[i].IsOnGenerator ? OnGenerator(solver.Harness, first, second, tests[i])
                    : tests[i].Instrument == Instrument.Ohmmeter
                        ? (cold ??= solver.Cold.Set(_setting, first, second)).Reading(tests[i])
                        : Alone(solver, first, second, tests[i]);
        return values;
    }

    private static bool IsPlain(TestPlace test) =>
        test.Instrument is Instrument.Meter or Instrument.Visual && test.To < 0 && test.IsAsListed;

    // Plain, or put together from what plain meters show.
    private bool IsOfPlain(TestPlace test) =>
        IsPlain(test)
        || test.Instrument is Instrument.Meter or Instrument.TestLamp
            && test.IsAsListed
            && !test.IsOnGenerator
            && _circuit.FuseOf(test) < 0;

    private static bool IsPlainOrAcross(TestPlace test) =>
        test.Instrument is Instrument.Meter or Instrument.Visual && test.IsAsListed && !test.IsOnGenerator;

    private Other Entry(TestPlace test)
    {
        if (!_others.TryGetValue(test, out Other? entry))
            _others[test] = entry = new Other(
                test,
                Column.Of(
                    _model.Members.Length,
                    _supply,
                    withDraws: test.IsLive && !test.Instrument.IsLook()
                ),
                new bool[_model.Members.Length]
            );
        return entry;
    }

    // A test that is no plain one, for which severities it is known, and the state of the healthy bike in it.
    private sealed record Other(TestPlace Test, Column Column, bool[] Has)
    {
        public CircuitState? Healthy { get; set; }
    }

    private void Solve(
        FaultSolver solver,
        int m,
        bool needsPlain,
        Other[] others
    )
    {
        solver.Supply = _supply;
        if (needsPlain && !_isSolved[m])
        {
            if (!TakesHealthy(solver, m))
            {
                double[] volts = SolveIdle(solver, m);
                TakeSoftPoints(solver, _meters, volts, _isSoft, m);
                for (int p = 0; p < volts.Length; p++)
                    _meter[p].Begin(m, volts[p]);
            }

            int points = _meter.Length;
            Spread(
                solver,
                m,
                [.. _meter, .. _eye],
                c => c < points ? solver.Volts(c) : _looks.Lamp(solver, c - points),
                null
            );
            _isSolved[m] = true;
        }

        SolveOthers(solver, m, others);
    }

    // Whether a fault does nothing in this setting: voltages and looks are then those of the healthy bike.
    private bool TakesHealthy(FaultSolver solver, int m)
    {
        if (m == 0 || !solver.Holds(_healthy!, _setting, _model.Members[m], everyPoint: true))
            return false;
        foreach (Column eye in _eye)
            eye.Begin(m, eye.Value[0]);
        for (int p = 0; p < _meter.Length; p++)
        {
            _meter[p].Begin(m, _meter[p].Value[0]);
            _isSoft[p][m] = _isSoft[p][0];
        }

        return _isIdleKnown[m] = true;
    }

    private double[] SolveIdle(FaultSolver solver, int m)
    {
        solver.Supply = _supply;
        solver.Set(_setting, _model.Members[m]);
        solver.Probe(-1, testLamp: false);
        solver.Solve();
        if (m == 0)
            _healthy = solver.StateOf(_setting, _model.Members[0]);
        for (int l = 0; l < _eye.Length; l++)
            _eye[l].Begin(m, _looks.Lamp(solver, l));
        double[] volts = [.. _meter.Select((_, p) => solver.Volts(p))];
        for (int p = 0; p < volts.Length; p++)
            _meter[p].Begin(m, volts[p]);
        _isIdleKnown[m] = true;
        return volts;
    }

    // A severity's row of columns: the change of the values with the supply, the engine's speed (not the same at any
    // two readings) and the draws of the tolerances.
    private void Spread(FaultSolver solver, int m, Column[] columns, Func<int, double> read, TestPlace? place)
    {
        FaultMember member = _model.Members[m];
        for (int i = 0; i < columns.Length; i++)
            columns[i].Begin(m, columns[i].Value[m]);
        for (int draw = 0; draw < ToleranceDraws.Count; draw++)
        {
            // What the first pair shows as on the healthy bike, every other does: a fault in what is switched off.
            if (draw == 2 && m > 0 && Array.TrueForAll(columns, c => c.IsAsFirst(m)))
            {
                foreach (Column column in columns)
                    column.TakeSpreadOfFirst(m);
                return;
            }

            solver.Set(_setting, member, draw: draw, place: place);
            solver.Solve();
            for (int i = 0; i < columns.Length; i++)
                columns[i].AddDraw(m, draw, read(i));
        }

        foreach (Column column in columns)
            column.Sigma[m] = (float)Math.Sqrt(column.Sigma[m] / ToleranceDraws.Count);
        solver.Set(_setting, member, supplyFactor: 1 + SupplyStep, place: place);
        solver.Solve();
        for (int i = 0; i < columns.Length; i++)
            if (columns[i].Draws.Length > 0)
                columns[i].Battery[m] = (float)((read(i) - columns[i].Value[m]) / SupplyStep);
        if (_supply.Speed is null)
            return;
        solver.Set(
            _setting,
            member,
            place: place,
            speedFactor: 1 + _circuit.Options.SpeedTolerance.DecimalFractions
        );
        solver.Solve();
        for (int i = 0; i < columns.Length; i++)
            columns[i].Own[m] = (float)Math.Abs(read(i) - columns[i].Value[m]);
    }

    private void SolveOthers(FaultSolver solver, int m, Other[] others)
    {
        FaultMember member = _model.Members[m];
        ColdNetwork? cold = null;
        double[]? loaded = null;
        bool isSet = false;
        solver.Probe(-1, testLamp: false);
        foreach (Other other in others)
        {
            (TestPlace test, Column column, bool[] has) = other;
            if (has[m])
                continue;
            if (test.IsOnGenerator)
            {
                double shown = OnGenerator(solver.Harness, member, null, test);
                isSet = false;
                column.Value[m] = (float)shown;
                if (test.Instrument == Instrument.Ohmmeter)
                    column.Sigma[m] = (float)OhmScale.Sigma(shown, isLamp: false);
                else
                    (column.Sigma[m], column.Own[m]) = (
                        (float)GeneratorBench.Spread(shown),
                        (float)(_circuit.Options.SpeedTolerance.DecimalFractions * shown)
                    );
            }
            else if (test.Instrument == Instrument.Ohmmeter)
            {
                cold ??= solver.Cold.Set(_setting, member);
                column.Value[m] = (float)cold.Reading(test);
                column.Sigma[m] = (float)_model.OhmSigma(test, _setting, column.Value[m]);
            }
            else if (test.Instrument == Instrument.Wiggle)
            {
                column.Value[m] = (float)_looks.Wiggled(member, test);
            }
            else if (test.IsOnBench)
            {
                column.Value[m] = (float)_looks.OnBench(member, test);
            }
            else if (test.Instrument == Instrument.Meter && test.IsAsListed)
            {
                Across(solver, m, test, column, ref isSet);
            }
            else if (
                test.Instrument == Instrument.TestLamp
                && test.IsAsListed
                && test.To < 0
                && _circuit.FuseOf(test) < 0
            )
            {
                loaded ??= Loaded(solver, m, ref isSet);
                TestLamp(solver, m, test, column, loaded);
            }
            else if (test.Instrument.IsLook())
            {
                column.Value[m] = Alone(solver, m, other);
                // The lamp that is looked at, or what feeds the test lamp, has the tolerance of a healthy bike.
                int lamp = test.Instrument == Instrument.TestLamp ? -1 : test.Index;
                column.Sigma[m] = lamp >= 0 ? _eye[lamp].Sigma[0] : 0.1f;
                if (column.Own.Length > 0)
                    column.Own[m] = lamp >= 0 ? _eye[lamp].Own[0] : 0.1f;
                isSet = false;
            }
            else
            {
                column.Value[m] = Alone(solver, m, other);
                solver.Probe(test);
                Spread(solver, m, [column], _ => Shown(solver, test), test);
                solver.Probe(-1, testLamp: false);
                isSet = false;
            }

            has[m] = true;
        }

        solver.Probe(-1, testLamp: false);
    }

    private double OnGenerator(FaultyHarness harness, in FaultMember first, in FaultMember? second, in TestPlace test)
    {
        harness.Set(_setting, first, second);
        return test.Instrument == Instrument.Ohmmeter
            ? OhmScale.Logarithm(_circuit.Generator.Ohms(harness, test), _circuit.Options)
            : _circuit.Generator.Volts(harness, test);
    }

    // The voltages with a resistor from every point to earth: where one hardly falls, a test lamp is as bright as the
    // idle meter says.
    private double[] Loaded(FaultSolver solver, int m, ref bool isSet)
    {
        solver.Set(_setting, _model.Members[m]);
        isSet = true;
        LampSpecification lamp = _circuit.TestLampSpecification;
        solver.LeakThrough(2 * lamp.ReferenceVoltage.Volts / lamp.ReferenceCurrent.Amperes);
        solver.Solve();
        double[] volts = [.. _meter.Select((_, p) => solver.Volts(p))];
        solver.LeakThrough(FaultCircuit.LeakOhms);
        return volts;
    }

    // A point that gives an idle meter almost zero gives a lamp no more.
    private void TestLamp(FaultSolver solver, int m, in TestPlace test, Column column, double[] loaded)
    {
        float volts = _meter[test.Index].Value[m];
        double full = _supply.FullVolts;
        column.Value[m] = (float)LookScale.NoLight;
        if (volts < 0.05 * full)
            return;
        if (loaded[test.Index] > volts - StiffShare * full)
        {
            column.Value[m] = (float)_looks.TestLamp(volts);
        }
        else
        {
            solver.Probe(test);
            solver.Solve();
            column.Value[m] = (float)_looks.TestLamp(solver);
        }

        column.Sigma[m] = (float)Math.Min(1.5, FilamentLaw.LightExponent * _meter[test.Index].Sigma[m] / volts);
        if (column.Own.Length > 0)
            column.Own[m] = (float)Math.Min(1.5, FilamentLaw.LightExponent * _meter[test.Index].Own[m] / volts);
    }

    // Between two points, by what is known of each; where the meter's own load moves one of them, with the meter in
    // place.
    private void Across(FaultSolver solver, int m, in TestPlace test, Column column, ref bool isSet)
    {
        Column a = _meter[test.Index],
            b = _meter[test.To];
        double idle = a.Value[m] - b.Value[m],
            share = 1;
        bool floats = false;
        column.Value[m] = (float)idle;
        if (_isSoft[test.Index][m] || _isSoft[test.To][m] || MayFloat(a.Value[m], b.Value[m]))
        {
            if (!isSet)
                solver.Set(_setting, _model.Members[m]);
            isSet = true;
            solver.Probe(test);
            solver.Solve();
            double loaded = solver.Volts(test);
            column.Value[m] = (float)loaded;
            // What the meter takes off the voltage it takes off its changes; a point that is joined to nothing shows
            // some hundredths.
            if (Math.Abs(loaded) < Math.Abs(idle))
                share = loaded / idle;
            floats = Math.Abs(loaded) < ReadingScale.DeadVolts && Math.Abs(idle) > 10 * ReadingScale.DeadVolts;
        }

        column.Battery[m] = (float)(share * (a.Battery[m] - b.Battery[m]));
        double squares = 0;
        for (int k = 0; k < column.Draws.Length; k++)
        {
            column.Draws[k][m] = (float)(share * (a.Draws[k][m] - b.Draws[k][m]));
            squares += column.Draws[k][m] * column.Draws[k][m];
        }

        column.Sigma[m] = (float)Math.Sqrt(squares / ToleranceDraws.Pairs);
        if (floats)
            column.Sigma[m] = Math.Max(column.Sigma[m], (float)ReadingScale.DeadVolts);
        if (column.Own.Length > 0)
            column.Own[m] = (float)Math.Abs(share * (a.Own[m] - b.Own[m]));
    }

    // A point without voltage that is joined to nothing follows the other probe, which it does not show to battery
    // minus.
    private bool MayFloat(double a, double b)
    {
        double least = 0.05 * _supply.FullVolts;
        return Math.Abs(a) < least != Math.Abs(b) < least;
    }

    // Of a fault that does nothing in the test, what the healthy bike shows.
    private float Alone(FaultSolver solver, int m, Other other)
    {
        TestPlace test = other.Test;
        if (other.Healthy is { } healthy && solver.Holds(healthy, _setting, _model.Members[m], false, test))
            return other.Column.Value[0];
        return (float)Alone(solver, _model.Members[m], null, test, m == 0 ? other : null);
    }

    // With what the test itself changes of the harness.
    private double Alone(
        FaultSolver solver,
        in FaultMember first,
        in FaultMember? second,
        in TestPlace test,
        Other? healthy = null
    )
    {
        if (test.IsOnBench)
            return _looks.OnBench(first, test, second);
        if (test.Instrument == Instrument.Wiggle)
            return _looks.Wiggled(first, test, second);
        solver.Set(_setting, first, second, place: test);
        solver.Probe(test);
        solver.Solve();
        double value = Shown(solver, test);
        if (healthy is not null)
            healthy.Healthy = solver.StateOf(_setting, first, test);
        solver.Probe(-1, testLamp: false);
        return value;
    }

    /// <summary>How every lamp looks in a test of a bike in order.</summary>
    public float[] Looks(FaultSolver solver, in TestPlace test)
    {
        solver.Supply = _supply;
        solver.StartCold();
        Alone(solver, _model.Members[0], null, test);
        return [.. Enumerable.Range(0, _circuit.Lamps.Length).Select(l => (float)_looks.Lamp(solver, l))];
    }

    private double Shown(FaultSolver solver, in TestPlace test) =>
        test.Instrument switch
        {
            Instrument.Meter => solver.Volts(test),
            Instrument.Ammeter when _circuit.IsInBatteryLead(test) => solver.BatteryAmperes,
            Instrument.Ammeter => solver.FuseAmperes(test.Index),
            Instrument.TestLamp => _looks.TestLamp(solver),
            _ => _looks.Lamp(solver, test.Index),
        };

    // Where a meter's own load moves the voltage (behind an LED that blocks, behind kilohms), it is put there alone.
    private void TakeSoftPoints(
        FaultSolver solver,
        IReadOnlyList<TestPlace> meters,
        double[] volts,
        bool[][]? soft,
        int member
    )
    {
        double[] idle = [.. meters.Select(t => t.Instrument == Instrument.Meter ? solver.Volts(t) : 0)];
        solver.LeakAsMeters(true);
        solver.Solve();
        List<int>? moved = null;
        for (int i = 0; i < volts.Length; i++)
            if (
                meters[i].Instrument is Instrument.Meter
                && meters[i].IsAsListed
                && (
                    Math.Abs(solver.Volts(meters[i].Index) - volts[i]) > SoftVolts && meters[i].To < 0
                    || meters[i].To >= 0
                        && (
                            Math.Abs(solver.Volts(meters[i]) - idle[i]) > SoftVolts
                            || MayFloat(solver.Volts(meters[i].Index), solver.Volts(meters[i].To))
                        )
                )
            )
                (moved ??= []).Add(i);
        solver.LeakAsMeters(false);
        foreach (int i in moved ?? [])
        {
            if (soft is not null)
                soft[i][member] = true;
            solver.Probe(meters[i]);
            solver.Solve();
            volts[i] = solver.Volts(meters[i]);
        }

        solver.Probe(-1, testLamp: false);
    }
}
