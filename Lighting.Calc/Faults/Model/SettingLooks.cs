namespace Lighting.Calc;

/// <summary>How lamps and the test lamp look in one setting: the logarithm of their light against the light
/// expected.</summary>
internal sealed class SettingLooks
{
    private readonly FaultModel _model;
    private readonly Setting _setting;
    private readonly double[] _expectedLight;

    public SettingLooks(FaultModel model, Setting setting)
    {
        _model = model;
        _setting = setting;
        _expectedLight = ExpectedLight();
    }

    /// <summary>Of the test lamp, against full voltage.</summary>
    public double TestLamp(FaultSolver solver)
    {
        LampSpecification lamp = _model.Circuit.TestLampSpecification;
        return LookScale.Logarithm(
            Light(lamp, Math.Max(0, solver.TestLampVolts)) / Light(lamp, _model.Circuit.Supply.FullVolts)
        );
    }

    /// <summary>Of a lamp. Of several lamps on the same points the worst is noted.</summary>
    public double Lamp(FaultSolver solver, int lamp)
    {
        LampFaultChange change = solver.Harness.Lamps[lamp];
        if (_expectedLight[lamp] <= 0 || change.Dead > 0)
            return LookScale.NoLight;
        double volts = solver.LampVolts(lamp);
        return LookScale.Logarithm(
            Light(change.Other ?? _model.Circuit.Bike.Lamps[lamp].Specification, change.IsReversed ? -volts : volts)
                / _expectedLight[lamp]
        );
    }

    // A lamp that should be dark here is compared with itself at the supply's voltage, so that it counts as lit when it
    // is.
    private double[] ExpectedLight()
    {
        var solver = new FaultSolver(_model.Circuit, _model.Draws);
        solver.Set(_setting, _model.Members[0]);
        solver.Solve();
        var light = new double[_model.Circuit.Lamps.Length];
        for (int l = 0; l < light.Length; l++)
        {
            LampSpecification right = _model.Circuit.Bike.Lamps[l].Specification;
            double here = Light(right, solver.LampVolts(l)),
                full = Light(right, _model.Circuit.Supply.FullVolts);
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
