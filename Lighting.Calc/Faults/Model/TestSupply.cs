using UnitsNet;

namespace Lighting.Calc;

/// <summary>What feeds the harness while it is tested: the battery, engine off, or a lighting coil at an engine
/// speed.</summary>
/// <remarks>
/// The coil is the <see cref="AlternatorEquivalent"/> fitted to the charging list, as <see cref="DirectLighting"/> has
/// it. All voltages are then rms; the harness is resistive, so that all of them are in phase and the network is that of
/// direct current at the coil's terminal voltage. A coil drives hardly more current through a short than through its
/// lamps, so that wires and fuses may outlast it.
/// </remarks>
/// <param name="OpenVolts">Voltage without load: the most a meter can show.</param>
/// <param name="FullVolts">Voltage at which a lamp counts as fully lit.</param>
/// <param name="Tolerance">Standard deviation of the voltage without load, as a share of it.</param>
/// <param name="Coil">The lighting coil; null for a battery.</param>
/// <param name="Rpm">Engine speed; zero for a battery.</param>
internal sealed record TestSupply(
    double OpenVolts,
    double FullVolts,
    double Tolerance,
    AlternatorEquivalent? Coil = null,
    double Rpm = 0
)
{
    // A fuse opens within minutes from this multiple of its rating on (tables/fuse-ratings.csv).
    private const double Opens = 1.35;

    /// <summary>Engine speed; null for a battery, engine off.</summary>
    public RotationalSpeed? Speed => Coil is null ? null : RotationalSpeed.FromRevolutionsPerMinute(Rpm);

    /// <exception cref="ArgumentException">No coil can be fitted to the charging list of a bike with direct
    /// lighting.</exception>
    public static TestSupply Of(Bike bike, FaultFindingOptions options)
    {
        if (bike.Lighting != LightingSupply.Direct)
        {
            double volts = (options.Supply ?? bike.BatteryVoltage).Volts;
            return new TestSupply(volts, volts, options.BatteryTolerance.DecimalFractions);
        }

        AlternatorEquivalent coil = DirectLighting.Of(bike, coilResistance: null).Source;
        double rpm = options.EngineSpeed?.RevolutionsPerMinute ?? SlowestRpm(bike);
        if (!(rpm > 0))
            throw new ArgumentException(
                $"Engine speed on direct lighting must be greater than zero, not {rpm} rpm.",
                nameof(options)
            );
        double open = coil.OpenVoltageAt(RotationalSpeed.FromRevolutionsPerMinute(rpm)).Volts;
        return new TestSupply(open, bike.SystemVoltage.Volts, options.CoilTolerance.DecimalFractions, coil, rpm);
    }

    /// <summary>Whether a dead short blows a fuse.</summary>
    public bool Blows(Fuse fuse) =>
        Coil is null
        || Coil.CurrentAt(Speed!.Value, ElectricPotential.Zero)!.Value.Amperes > Opens * fuse.Rating.Amperes;

    // A point at standstill gives nothing.
    private static double SlowestRpm(Bike bike) =>
        bike.Charging.Select(c => c.Speed.RevolutionsPerMinute).Where(n => n > 0).Min();
}
