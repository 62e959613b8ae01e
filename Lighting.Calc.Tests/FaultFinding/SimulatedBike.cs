using MathNet.Numerics.Distributions;
using UnitsNet;

namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>A bike in the shed: its lamps, joints, contacts and battery or coil within their tolerance of the lists,
/// with one fault, and a mechanic who reads it.</summary>
internal sealed class SimulatedBike
{
    private readonly FaultCircuit _circuit;
    private readonly FaultSolver _solver;
    private readonly FaultMember _fault;
    private readonly FaultMember? _second;
    private readonly FaultFinder _finder;
    private readonly Random _random;
    private readonly double _coil = 1;

    /// <param name="finder">Gives the lists and the names of the tests; nothing it predicts is used.</param>
    /// <param name="fault">The fault.</param>
    /// <param name="random">Draws the tolerances and the errors.</param>
    /// <param name="second">A second fault; null for none.</param>
    /// <param name="altered">What else differs from the lists: parts are appended, none removed; null for
    /// nothing.</param>
    public SimulatedBike(
        FaultFinder finder,
        FaultMember fault,
        Random random,
        FaultMember? second = null,
        Func<Bike, Bike>? altered = null
    )
    {
        _finder = finder;
        _fault = fault;
        _second = second;
        _random = random;
        Bike lists = finder.Bike;
        Bike drawn = lists with
        {
            BatteryVoltage = lists.BatteryVoltage * Math.Clamp(Normal.Sample(random, 1, 0.02), 0.95, 1.05),
            Lamps = [.. lists.Lamps.Select(l => l with { Specification = Drawn(l.Specification) })],
            Runs =
            [
                .. lists.Runs.Select(r =>
                    r with
                    {
                        JointResistance = r.JointResistance * Spread(),
                        Length = r.Length * Normal.Sample(random, 1, 0.05),
                    }
                ),
            ],
            Switches = [.. lists.Switches.Select(s => s with { Resistance = s.Resistance * Spread() })],
            Fuses = [.. lists.Fuses.Select(f => f with { Resistance = FuseTable.ResistanceOf(f) * Spread() })],
        };
        if (finder.EngineSpeed is not null)
            _coil = Math.Clamp(Normal.Sample(random, 1, 0.05), 0.88, 1.12);
        _circuit = new FaultCircuit(altered?.Invoke(drawn) ?? drawn, finder.Model.Circuit.Options);
        _solver = new FaultSolver(_circuit, new ToleranceDraws(_circuit));
    }

    /// <summary>How a lamp looks to whoever rides the bike, and has seen it more than once.</summary>
    public Reading Look(Setting setting, int lamp) => Read(new TestPlace(setting, Instrument.Visual, lamp), eye: 0);

    /// <summary>What the mechanic notes for a test: a meter within ±1 % of the volts and two decimals, an eye that
    /// judges to a third.</summary>
    public Reading Read(in TestPlace asked) => Read(asked, eye: Normal.Sample(_random, 0, 0.25));

    private Reading Read(in TestPlace asked, double eye)
    {
        TestPlace test = Here(asked);
        FaultModel names = _finder.Model;
        var reading = new Reading
        {
            When = asked.IsOnBench
                ? Condition.Always
                : Condition.Parse(
                    string.Join("; ", asked.Setting.Positions.Where(p => p.Position != SwitchDefinition.Off))
                ),
            Point = names.NameOf(asked),
            Instrument = asked.Instrument,
            To = asked.To >= 0 ? names.Circuit.Points[asked.To] : null,
            Jumper = asked.HasJumper
                ? new JumperLead(names.Circuit.Points[asked.JumperFrom], names.Circuit.Points[asked.JumperTo])
                : null,
            Unplugged = names.Circuit.UnpluggedIn(asked),
        };
        switch (asked.Instrument)
        {
            case Instrument.Ohmmeter:
                var cold = new ColdNetwork(_circuit).Set(test.Setting, _fault, _second, test);
                double ohms = cold.Ohms(test);
                bool isLamp = test.To < 0 && _circuit.MeasuredParts[test.Index].Lamp >= 0;
                double shown =
                    (ohms + 0.1 * _random.NextDouble())
                    * Error()
                    * (isLamp ? Math.Exp(Normal.Sample(_random, 0, 0.1)) : 1);
                return shown > 20e6
                    ? reading with
                    {
                        IsOpen = true,
                    }
                    : reading with
                    {
                        Resistance = ElectricResistance.FromOhms(Math.Round(shown, 1)),
                    };
            case Instrument.Wiggle:
                return reading with { Seen = Flickers(test) ? Brightness.Dim : Brightness.Normal };
            case Instrument.Bench or Instrument.BenchReversed:
                return reading with { Seen = LookScale.Of(BenchLight(test) + eye) };
        }

        double speed = _finder.EngineSpeed is null ? 1 : Math.Clamp(Normal.Sample(_random, 1, 0.03), 0.92, 1.08);
        _solver.Set(test.Setting, _fault, _second, supplyFactor: _coil, place: test, speedFactor: speed);
        _solver.Probe(test);
        _solver.Solve();
        return asked.Instrument switch
        {
            Instrument.Meter => reading with
            {
                Voltage = ElectricPotential.FromVolts(Math.Round(_solver.Volts(test) * Error(), 2)),
            },
            Instrument.Ammeter when _circuit.IsInBatteryLead(test) => reading with
            {
                Current = ElectricCurrent.FromAmperes(Math.Round(_solver.BatteryAmperes * Error(), 3)),
            },
            Instrument.Ammeter => reading with
            {
                Current = ElectricCurrent.FromAmperes(Math.Round(_solver.FuseAmperes(test.Index) * Error(), 2)),
            },
            Instrument.TestLamp => reading with
            {
                Seen = LookScale.Of(
                    LightOf(_circuit.TestLampSpecification, _solver.TestLampVolts, _circuit.Supply.FullVolts) + eye
                ),
            },
            _ => reading with { Seen = LookScale.Of(LampLight(test.Setting, test.Index) + eye) },
        };
    }

    /// <summary>The readings of a test: of a round of the bike one of each lamp.</summary>
    public IEnumerable<Reading> Answer(TestPlace asked) =>
        asked.IsEveryLamp
            ? RoundOfLamps.LampsOf(_finder.Model).Select(l => Read(asked.OfLamp(l)))
            : [Read(asked)];

    // Points that were appended are numbered among the others.
    private TestPlace Here(in TestPlace asked)
    {
        FaultCircuit names = _finder.Model.Circuit;
        int Point(int point) => point < 0 ? point : _circuit.NodeOf(names.Points[point]);
        int Part(int part) =>
            _circuit
                .MeasuredParts.ToList()
                .FindIndex(p =>
                    (p.Name, p.Contact) == (names.MeasuredParts[part].Name, names.MeasuredParts[part].Contact)
                );
        TestPlace test = asked with
        {
            To = Point(asked.To),
            JumperFrom = Point(asked.JumperFrom),
            JumperTo = Point(asked.JumperTo),
            Unplugged = asked.Unplugged >= 0 ? Part(asked.Unplugged) : asked.Unplugged,
        };
        if (names.FuseOf(asked) is >= 0 and var fuse)
            return test with { Index = _circuit.Points.Length + fuse };
        if (
            asked.Instrument is Instrument.Meter or Instrument.TestLamp
            || asked.Instrument == Instrument.Ohmmeter && asked.To >= 0
        )
            return test with { Index = Point(asked.Index) };
        return asked.Instrument is Instrument.Ohmmeter or Instrument.Wiggle
            ? test with
            {
                Index = Part(asked.Index),
            }
            : test;
    }

    // Seven of ten poor connections flicker when they are moved, half of the open ones, and hardly anything else.
    private bool Flickers(in TestPlace test)
    {
        MeasuredPart part = _circuit.MeasuredParts[test.Index];
        double chance = 0.02;
        foreach (FaultMember fault in new[] { _fault, _second ?? _fault })
            if (fault.Family is ResistanceFault joint && joint.IsOf(part))
                chance = Math.Max(chance, double.IsInfinity(fault.Case.Ohms) ? 0.5 : 0.7);
        return _random.NextDouble() < chance;
    }

    private double Error() => 1 + 0.01 * (2 * _random.NextDouble() - 1);

    private double Spread() => Math.Exp(Normal.Sample(_random, 0, 0.3));

    private LampSpecification Drawn(LampSpecification lamp) =>
        LampSpecification.FromCurrent(
            lamp.Type,
            lamp.ReferenceVoltage,
            lamp.ReferenceCurrent * Math.Clamp(Normal.Sample(_random, 1, 0.05), 0.85, 1.15),
            lamp.MinimumVoltage
        );

    // The mechanic knows how this lamp should look where it belongs lit.
    private double LampLight(Setting setting, int lamp)
    {
        LampSpecification right = _finder.Bike.Lamps[lamp].Specification;
        LampFaultChange change = _solver.Harness.Lamps[lamp];
        double volts = _solver.LampVolts(change.ExchangedWith > 0 ? change.ExchangedWith - 1 : lamp);
        double seen = (change.Dead > 0 ? 0 : 1) * Light(change.Other ?? right, change.IsReversed ? -volts : volts);
        _solver.Set(setting, _finder.Model.Members[0], supplyFactor: _coil);
        _solver.Probe(-1, testLamp: false);
        _solver.Solve();
        double expected = Light(right, _solver.LampVolts(lamp)),
            full = Light(right, _circuit.Supply.FullVolts);
        return LookScale.Logarithm(seen / (expected > 0.03 * full ? expected : full));
    }

    private double BenchLight(in TestPlace test)
    {
        var harness = new FaultyHarness(_circuit);
        harness.Set(test.Setting, _fault, _second);
        LampFaultChange change = harness.Lamps[test.Index];
        LampSpecification right = _finder.Bike.Lamps[test.Index].Specification;
        double full = _circuit.Supply.FullVolts;
        bool isTurned = change.IsReversed != (test.Instrument == Instrument.BenchReversed);
        bool isDark = change.Dead > 0 || isTurned && right.Type is (LampType.Led or LampType.LedResistor);
        return LookScale.Logarithm((isDark ? 0 : Light(change.Other ?? right, full)) / Light(right, full));
    }

    private static double LightOf(LampSpecification lamp, double volts, double full) =>
        LookScale.Logarithm(Light(lamp, Math.Max(0, volts)) / Light(lamp, full));

    private static double Light(LampSpecification lamp, double volts) =>
        (lamp.RelativeLightAt(ElectricPotential.FromVolts(volts))?.DecimalFractions ?? 0)
        * (double)lamp.ReferencePower.Watts;
}
