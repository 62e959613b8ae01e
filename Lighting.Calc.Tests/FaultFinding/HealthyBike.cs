namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>A bike in order as it is tested, from the plain harness: on its battery, or on its lighting coil at the
/// engine speed of the test.</summary>
internal sealed class HealthyBike(FaultFinder finder)
{
    private readonly DirectLighting? _direct = finder.EngineSpeed is null
        ? null
        : DirectLighting.Of(finder.Bike, coilResistance: null);

    public OperatingPoint In(Setting setting)
    {
        Bike bike = _direct is null
            ? finder.Bike
            : finder.Bike with
            {
                BatteryResistance = UnitsNet.ElectricResistance.Zero,
            };
        HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
        solver.SetSupply(_direct?.At(finder.EngineSpeed!.Value, setting).TerminalVoltage ?? finder.Bike.BatteryVoltage);
        return solver.Solve(setting);
    }

    /// <summary>Every point with the meter and every lamp by eye, in each setting.</summary>
    public IEnumerable<Reading> Readings()
    {
        foreach (Setting setting in finder.Settings)
        {
            OperatingPoint healthy = In(setting);
            string when = setting.AsCondition().ToString();
            foreach (NodeVoltage point in healthy.Points.Where(p => p.Point != Bike.BatteryMinus))
                yield return ReadingOf.Meter(when, point.Point, Math.Round(point.Voltage.Volts, 2));
            for (int l = 0; l < finder.Bike.Lamps.Length; l++)
                if (finder.Model.GivesLight(l))
                    yield return ReadingOf.Seen(
                        when,
                        finder.Bike.Lamps[l].Lamp,
                        Math.Abs(healthy.Lamps[l].Voltage.Volts) > 1 ? Brightness.Normal : Brightness.Dark
                    );
        }
    }
}
