namespace Lighting.Calc;

/// <summary>How lamps and the test lamp look in one setting: the logarithm of their light against the light
/// expected.</summary>
internal sealed class SettingLooks
{
    private readonly FaultModel _model;
    private readonly Setting _setting;
    private readonly TestSupply _supply;
    private readonly double[] _expectedLight;

    public SettingLooks(FaultModel model, Setting setting, TestSupply supply)
    {
        _model = model;
        _setting = setting;
        _supply = supply;
        _expectedLight = ExpectedLight();
    }

    /// <summary>Of the test lamp, against full voltage.</summary>
    public double TestLamp(FaultSolver solver) => TestLamp(solver.TestLampVolts);

    /// <summary>The same at a voltage.</summary>
    public double TestLamp(double volts)
    {
        LampSpecification lamp = _model.Circuit.TestLampSpecification;
        return LookScale.Logarithm(Light(lamp, Math.Max(0, volts)) / Light(lamp, _supply.FullVolts));
    }

    /// <summary>Of a lamp. Of several lamps on the same points the worst is noted.</summary>
    public double Lamp(FaultSolver solver, int lamp)
    {
        LampFaultChange change = solver.Harness.Lamps[lamp];
        if (_expectedLight[lamp] <= 0 || change.Dead > 0)
            return LookScale.NoLight;
        double volts = solver.LampVolts(change.ExchangedWith > 0 ? change.ExchangedWith - 1 : lamp);
        return LookScale.Logarithm(
            Light(change.Other ?? _model.Circuit.Bike.Lamps[lamp].Specification, change.IsReversed ? -volts : volts)
                / _expectedLight[lamp]
        );
    }

    /// <summary>Of a lamp straight on the supply, its feed on the live terminal or, reversed, on the other.</summary>
    public double OnBench(in FaultMember first, in TestPlace test, in FaultMember? second = null)
    {
        var harness = new FaultyHarness(_model.Circuit);
        harness.Set(_setting, first, second);
        LampFaultChange change = harness.Lamps[test.Index];
        if (change.Dead > 0)
            return LookScale.NoLight;
        LampSpecification right = _model.Circuit.Bike.Lamps[test.Index].Specification,
            fitted = change.Other ?? right;
        double full = _supply.FullVolts;
        bool lights =
            fitted.Type is not (LampType.Led or LampType.LedResistor)
            || change.IsReversed == (test.Instrument == Instrument.BenchReversed);
        return lights ? LookScale.Logarithm(Light(fitted, full) / Light(right, full)) : LookScale.NoLight;
    }

    /// <summary>Of the lamps that are watched while a part is moved by hand. A poor connection flickers in seven of ten
    /// cases, an open one in half of them: common practice, no source.</summary>
    public double Wiggled(in FaultMember first, in TestPlace test, in FaultMember? second = null)
    {
        const double poor = -0.75,
            open = -0.6;
        MeasuredPart part = _model.Parts[test.Index];
        return Math.Min(Of(first), second is { } other ? Of(other) : 0);

        double Of(in FaultMember member) =>
            member.Family is not ResistanceFault fault || !fault.IsOf(part) ? 0
            : double.IsInfinity(member.Case.Ohms) ? open
            : poor;
    }

    // A lamp that should be dark here is compared with itself at the supply's voltage, so that it counts as lit when it
    // is.
    private double[] ExpectedLight()
    {
        var solver = new FaultSolver(_model.Circuit, _model.Draws) { Supply = _supply };
        solver.Set(_setting, _model.Members[0]);
        solver.Solve();
        var light = new double[_model.Circuit.Lamps.Length];
        for (int l = 0; l < light.Length; l++)
        {
            LampSpecification right = _model.Circuit.Bike.Lamps[l].Specification;
            double here = Light(right, solver.LampVolts(l)),
                full = Light(right, _supply.FullVolts);
            light[l] = here > LitRule.DarkBelow * full ? here : full;
        }

        return light;
    }

    // Light in proportion to the power at the reference point, so that lamps of different power compare.
    private static double Light(LampSpecification lamp, double volts)
    {
        double relative = lamp.RelativeLightAt(UnitsNet.ElectricPotential.FromVolts(volts))?.DecimalFractions ?? 0;
        return relative * (double)lamp.ReferencePower.Watts;
    }
}
