using UnitsNet;

namespace Lighting.Calc;

/// <summary>What feeds the harness while it is tested: the battery, engine off; generator, regulator and battery at an
/// engine speed; or a lighting coil at one.</summary>
/// <remarks>
/// The coil is the <see cref="AlternatorEquivalent"/> fitted to the charging list, as <see cref="DirectLighting"/> has
/// it. All voltages are then rms; the harness is resistive, so that all of them are in phase and the network is that of
/// direct current at the coil's terminal voltage. A coil drives hardly more current through a short than through its
/// lamps, so that wires and fuses may outlast it.
/// </remarks>
/// <param name="OpenVolts">Voltage without load: of the battery, of the coil, or what the regulator holds.</param>
/// <param name="FullVolts">Voltage at which a lamp counts as fully lit.</param>
/// <param name="MostVolts">The most a meter can show.</param>
/// <param name="Tolerance">Standard deviation of the voltage without load, as a share of it.</param>
/// <param name="SourceOhms">Resistance of the source.</param>
/// <param name="Rpm">Engine speed; zero with the engine off.</param>
/// <param name="Coil">The lighting coil; null for a battery.</param>
/// <param name="Running">The charging system with the engine running; null with the engine off or for a coil.</param>
internal sealed record TestSupply(
    double OpenVolts,
    double FullVolts,
    double MostVolts,
    double Tolerance,
    double SourceOhms,
    double Rpm = 0,
    AlternatorEquivalent? Coil = null,
    RunningSupply? Running = null
)
{
    /// <summary>The most that a failed regulator is taken to hold, of its voltage: common practice, no
    /// source.</summary>
    public const double MostHeld = 1.4;

    // A fuse opens within minutes from this multiple of its rating on (tables/fuse-ratings.csv).
    private const double Opens = 1.35;

    /// <summary>Engine speed; null with the engine off.</summary>
    public RotationalSpeed? Speed => Rpm == 0 ? null : RotationalSpeed.FromRevolutionsPerMinute(Rpm);

    /// <exception cref="ArgumentException">No coil can be fitted to the charging list of a bike with direct lighting,
    /// or the engine speed is outside the charging list.</exception>
    public static TestSupply Of(Bike bike, FaultFindingOptions options)
    {
        if (bike.Lighting != LightingSupply.Direct)
            return options.Supply is { } held ? OfBattery(held.Volts, bike, options)
                : options.Engine == EngineState.Off ? OfBattery(bike.BatteryVoltage.Volts, bike, options)
                : OfEngine(bike, options, options.EngineSpeed?.RevolutionsPerMinute);
        AlternatorEquivalent coil = DirectLighting.Of(bike, coilResistance: null).Source;
        double rpm = options.EngineSpeed?.RevolutionsPerMinute ?? SlowestRpm(bike);
        if (!(rpm > 0))
            throw new ArgumentException(
                $"Engine speed on direct lighting must be greater than zero, not {rpm} rpm.",
                nameof(options)
            );
        double open = coil.OpenVoltageAt(RotationalSpeed.FromRevolutionsPerMinute(rpm)).Volts,
            tolerance = options.CoilTolerance.DecimalFractions;
        return new TestSupply(open, bike.SystemVoltage.Volts, open, tolerance, 0, rpm, coil);
    }

    /// <summary>The supply of a bike with a battery at another state of the engine.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="options">The options.</param>
    /// <param name="rpm">Engine speed; zero for off, null for the speed at which charging is tested.</param>
    /// <exception cref="ArgumentException">The engine speed is outside the charging list.</exception>
    public static TestSupply At(Bike bike, FaultFindingOptions options, double? rpm) =>
        rpm == 0 ? OfBattery(bike.BatteryVoltage.Volts, bike, options) : OfEngine(bike, options, rpm);

    /// <summary>Whether a dead short blows a fuse.</summary>
    public bool Blows(Fuse fuse) =>
        Coil is null
        || Coil.CurrentAt(Speed!.Value, ElectricPotential.Zero)!.Value.Amperes > Opens * fuse.Rating.Amperes;

    private static TestSupply OfBattery(double volts, Bike bike, FaultFindingOptions options) =>
        new(volts, volts, volts, options.BatteryTolerance.DecimalFractions, bike.BatteryResistance.Ohms);

    // Without a charging list the charging voltage counts as held.
    private static TestSupply OfEngine(Bike bike, FaultFindingOptions options, double? rpm)
    {
        double tolerance = options.BatteryTolerance.DecimalFractions,
            charging = bike.ChargingVoltage.Volts;
        if (bike.Charging.IsEmpty)
            return new TestSupply(charging, charging, charging, tolerance, 0);
        RunningSupply running = RunningSupply.Of(bike, rpm);
        return new TestSupply(
            running.HeldVolts,
            running.HeldVolts,
            MostHeld * running.HeldVolts,
            tolerance,
            bike.BatteryResistance.Ohms,
            running.Rpm,
            Running: running
        );
    }

    // A point at standstill gives nothing.
    private static double SlowestRpm(Bike bike) =>
        bike.Charging.Select(c => c.Speed.RevolutionsPerMinute).Where(n => n > 0).Min();
}
