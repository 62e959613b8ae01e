using Lighting.Calc.Harness;
using Lighting.Calc.Lamps;

namespace Lighting.Calc.FaultFinding;

/// <summary>How lamps and the test lamp look in one setting: the logarithm of their light against the light expected.</summary>
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

    /// <summary>Of the test lamp, against full volts.</summary>
    public double TestLamp(FaultSolver solver)
    {
        LampSpecification lamp = _model.Circuit.TestLampSpecification;
        return LookScale.Logarithm(Light(lamp, Math.Max(0, solver.TestLampVolts)) / Light(lamp, _model.Circuit.Supply.FullVolts));
    }

    /// <summary>Of a lamp under one or two faults.</summary>
    public double Lamp(FaultSolver solver, in FaultMember first, int lamp, in FaultMember? second = null)
    {
        if (_expectedLight[lamp] <= 0)
            return LookScale.NoLight;
        FittedLamp fitted = _model.Circuit.Bike.Lamps[lamp];
        LampSpecification specification = fitted.Specification;
        // Of several lamps on the same points the eye notes the worst.
        double share = 1, sign = 1;
        Change(first);
        if (second is { } other)
            Change(other);
        return LookScale.Logarithm(share * Light(specification, sign * solver.LampVolts(lamp)) / _expectedLight[lamp]);

        void Change(in FaultMember member)
        {
            if (member.Family.Part != lamp)
                return;
            switch (member.Family.Kind)
            {
                case FaultKind.LampDead:
                    share = 0;
                    break;
                case FaultKind.WrongLamp:
                    specification = member.Case.Lamp!;
                    break;
                case FaultKind.LedReversed:
                    sign = -1;
                    break;
            }
        }
    }

    // A lamp that should be dark here is compared with itself at the supply's volts, so that it counts as lit when it is.
    private double[] ExpectedLight()
    {
        var solver = new FaultSolver(_model.Circuit, _model.Draws);
        solver.Set(_setting, _model.Members[0]);
        solver.Solve();
        var light = new double[_model.Circuit.Lamps.Length];
        for (int l = 0; l < light.Length; l++)
        {
            LampSpecification right = _model.Circuit.Bike.Lamps[l].Specification;
            double here = Light(right, solver.LampVolts(l)), full = Light(right, _model.Circuit.Supply.FullVolts);
            light[l] = here > 0.03 * full ? here : full;
        }

        return light;
    }

    // Light in proportion to the watts at the reference point, so that lamps of different watts compare.
    private static double Light(LampSpecification lamp, double volts)
    {
        double relative = lamp.RelativeLightAt(UnitsNet.ElectricPotential.FromVolts(volts))?.DecimalFractions ?? 0;
        return relative * (double)lamp.ReferencePower.Watts;
    }
}
