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
    private readonly FaultFinder _finder;
    private readonly Random _random;
    private readonly double _coil = 1;

    /// <param name="finder">Gives the lists and the names of the tests; nothing it predicts is used.</param>
    /// <param name="fault">The fault.</param>
    /// <param name="random">Draws the tolerances and the errors.</param>
    public SimulatedBike(FaultFinder finder, FaultMember fault, Random random)
    {
        _finder = finder;
        _fault = fault;
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
        _circuit = new FaultCircuit(drawn, finder.Model.Circuit.Options);
        _solver = new FaultSolver(_circuit, new ToleranceDraws(_circuit));
    }

    /// <summary>What the mechanic notes for a test: a meter within ±1 % of the volts and two decimals, an eye that
    /// judges to a third.</summary>
    public Reading Read(FaultTest test)
    {
        var when = Condition.Parse(
            string.Join("; ", test.Setting.Positions.Where(p => p.Position != SwitchDefinition.Off))
        );
        var reading = new Reading
        {
            When = when,
            Point = test.Point,
            Instrument = test.Instrument,
        };
        if (test.Instrument == Instrument.Ohmmeter)
        {
            MeasuredPart part = _finder.Model.Parts.First(p => p.Name == test.Point);
            double ohms = new ColdNetwork(_circuit, test.Setting, _fault).Across(part);
            double shown =
                (ohms + 0.1 * _random.NextDouble())
                * Error()
                * (part.Lamp >= 0 ? Math.Exp(Normal.Sample(_random, 0, 0.1)) : 1);
            return shown > 20e6
                ? reading with
                {
                    IsOpen = true,
                }
                : reading with
                {
                    Resistance = ElectricResistance.FromOhms(Math.Round(shown, 1)),
                };
        }

        int index = test.Instrument switch
        {
            Instrument.Ammeter => _finder.Bike.Fuses.Select(f => f.Name).ToList().IndexOf(test.Point),
            Instrument.Visual => _finder.Bike.Lamps.Select(l => l.Lamp).ToList().IndexOf(test.Point),
            _ => _circuit.NodeOf(test.Point),
        };
        bool probes = test.Instrument is Instrument.Meter or Instrument.TestLamp;
        double speed = _finder.EngineSpeed is null ? 1 : Math.Clamp(Normal.Sample(_random, 1, 0.03), 0.92, 1.08);
        _solver.Set(
            test.Setting,
            _fault,
            supplyFactor: _coil,
            ammeterFor: test.Instrument == Instrument.Ammeter ? index : -1,
            speedFactor: speed
        );
        _solver.Probe(probes ? index : -1, test.Instrument == Instrument.TestLamp);
        _solver.Solve();
        double eye = Normal.Sample(_random, 0, 0.25);
        return test.Instrument switch
        {
            Instrument.Meter => reading with
            {
                Voltage = ElectricPotential.FromVolts(Math.Round(_solver.Volts(index) * Error(), 2)),
            },
            Instrument.Ammeter => reading with
            {
                Current = ElectricCurrent.FromAmperes(Math.Round(_solver.FuseAmperes(index) * Error(), 2)),
            },
            Instrument.TestLamp => reading with
            {
                Seen = LookScale.Of(
                    LightOf(_circuit.TestLampSpecification, _solver.TestLampVolts, _circuit.Supply.FullVolts) + eye
                ),
            },
            _ => reading with { Seen = LookScale.Of(LampLight(test.Setting, index) + eye) },
        };
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
        LampSpecification right = _finder.Bike.Lamps[lamp].Specification,
            fitted = right;
        double volts = _solver.LampVolts(lamp),
            share = 1;
        if (_fault.Family.Part == lamp)
        {
            if (_fault.Family.Kind == FaultKind.LampDead)
                share = 0;
            else if (_fault.Family.Kind == FaultKind.WrongLamp)
                fitted = _fault.Case.Lamp!;
            else if (_fault.Family.Kind == FaultKind.LedReversed)
                volts = -volts;
        }

        double seen = share * Light(fitted, volts);
        _solver.Set(setting, _finder.Model.Members[0], supplyFactor: _coil);
        _solver.Solve();
        double expected = Light(right, _solver.LampVolts(lamp)),
            full = Light(right, _circuit.Supply.FullVolts);
        return LookScale.Logarithm(seen / (expected > 0.03 * full ? expected : full));
    }

    private static double LightOf(LampSpecification lamp, double volts, double full) =>
        LookScale.Logarithm(Light(lamp, Math.Max(0, volts)) / Light(lamp, full));

    private static double Light(LampSpecification lamp, double volts) =>
        (lamp.RelativeLightAt(ElectricPotential.FromVolts(volts))?.DecimalFractions ?? 0)
        * (double)lamp.ReferencePower.Watts;
}
