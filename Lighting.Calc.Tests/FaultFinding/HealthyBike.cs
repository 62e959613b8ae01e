using Lighting.Calc.Charging;
using Lighting.Calc.FaultFinding;
using Lighting.Calc.Harness;
using Lighting.Calc.Network;

namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>A bike in order as it is tested, from the plain harness: on its battery, or on its lighting coil at the engine speed of the test.</summary>
internal sealed class HealthyBike(FaultFinder finder)
{
    private readonly DirectLighting? _direct = finder.EngineSpeed is null ? null : DirectLighting.Of(finder.Bike, coilResistance: null);

    public OperatingPoint In(Setting setting)
    {
        Bike bike = _direct is null ? finder.Bike : finder.Bike with { BatteryResistance = UnitsNet.ElectricResistance.Zero };
        HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
        solver.SetSupply(_direct?.At(finder.EngineSpeed!.Value, setting).TerminalVoltage ?? finder.Bike.BatteryVoltage);
        return solver.Solve(setting);
    }
}
