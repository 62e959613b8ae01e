using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Lamps fed straight by an alternating-current coil, without a battery: the fewer lamps, the more voltage on
/// each.</summary>
/// <remarks>
/// The terminal voltage is that at which the coil's current, by <see cref="AlternatorEquivalent"/>, equals the current
/// of the lamps through the harness. Of several such voltages, possible with LED drivers, the highest is taken. An
/// LED counts as on direct current of the same rms voltage, which is only a first estimate. For one thread at a time.
/// </remarks>
internal sealed class DirectLighting
{
    private readonly Bike _lit;
    private readonly HarnessSolver _solver;

    private DirectLighting(Bike bike, AlternatorEquivalent source, AlternatorEquivalentFit? fit)
    {
        Bike = bike;
        Source = source;
        Fit = fit;
        _lit = bike with { BatteryResistance = ElectricResistance.Zero };
        _solver = new HarnessNetwork(_lit).CreateSolver();
    }

    /// <summary>The bike.</summary>
    public Bike Bike { get; }

    /// <summary>The lighting coil.</summary>
    public AlternatorEquivalent Source { get; }

    /// <summary>How the coil fits the charging list; null for a coil that was given.</summary>
    public AlternatorEquivalentFit? Fit { get; }

    /// <summary>Describes the direct lighting of a bike with a coil fitted to its charging list, whose amps are those
    /// at the charging voltage.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="coilResistance">Resistance of the coil as an ohmmeter reads it, zero or more; null where it is not
    /// known, see <see cref="AlternatorEquivalentFit.TryFit"/>.</param>
    public static DirectLighting Of(Bike bike, ElectricResistance? coilResistance)
    {
        ImmutableArray<ChargingCurve> curves = ChargingCurve.Of(bike.Charging);
        if (curves.Length != 1)
            throw new ArgumentException(
                $"Direct lighting needs the points of one coil in the charging list; it has "
                    + $"{(curves.IsEmpty ? "none" : $"those of {curves.Length}")}.",
                nameof(bike)
            );
        if (
            !AlternatorEquivalentFit.TryFit(
                curves[0],
                bike.ChargingVoltage,
                coilResistance,
                out AlternatorEquivalentFit? fit,
                out string? reason
            )
        )
            throw new ArgumentException(
                $"No lighting coil can be fitted to the charging list: {reason}.",
                nameof(bike)
            );
        return new DirectLighting(bike, fit!.Source, fit);
    }

    /// <summary>Describes the direct lighting of a bike with a coil that is known.</summary>
    public static DirectLighting Of(Bike bike, AlternatorEquivalent source) => new(bike, source, null);

    /// <summary>The lighting at an engine speed.</summary>
    public DirectLightingPoint At(RotationalSpeed speed, Setting setting)
    {
        double rpm = speed.RevolutionsPerMinute;
        if (!(rpm >= 0))
            throw new ArgumentOutOfRangeException(nameof(speed), speed, "Engine speed must be zero or more.");
        double volts = TerminalVolts(rpm, setting);
        OperatingPoint point = SolveAt(volts, setting);
        return new DirectLightingPoint
        {
            Speed = speed,
            OpenVoltage = Source.OpenVoltageAt(speed),
            TerminalVoltage = ElectricPotential.FromVolts(volts),
            Current = point.TotalCurrent,
            Lamps = point.Lamps,
        };
    }

    /// <summary>The lighting over engine speeds.</summary>
    /// <returns>One for each speed, in their order.</returns>
    public ImmutableArray<DirectLightingPoint> Over(IEnumerable<RotationalSpeed> speeds, Setting setting) =>
        [.. speeds.Select(s => At(s, setting))];

    /// <summary>What the failure of a lamp does to the rest, where the lighting before is known. All of its quantity
    /// fail together.</summary>
    public DirectLightingChange Lost(FittedLamp lamp, DirectLightingPoint before, Setting setting)
    {
        var after = new DirectLighting(Bike with { Lamps = Bike.Lamps.Remove(lamp) }, Source, Fit);
        double volts = before.TerminalVoltage.Volts;
        double relieved = before.Current.Amperes - after.SolveAt(volts, setting).TotalCurrent.Amperes;
        return new DirectLightingChange
        {
            Lamp = lamp,
            Before = before,
            After = after.At(before.Speed, setting),
            EquivalentResistor =
                relieved > 1e-6
                    ? new EquivalentResistor(
                        ElectricResistance.FromOhms(volts / relieved),
                        Power.FromWatts(volts * relieved)
                    )
                    : null,
        };
    }

    /// <summary>What a regulator across the coil has to take to hold a voltage.</summary>
    public ShuntRegulatorLoad Shunt(ElectricPotential limit, RotationalSpeed speed, Setting setting)
    {
        if (!(limit.Volts > 0))
            throw new ArgumentOutOfRangeException(nameof(limit), limit, "Regulator voltage must be greater than zero.");
        double given = Source.CurrentAt(speed, limit)?.Amperes ?? 0;
        double taken = Math.Max(0, given - SolveAt(limit.Volts, setting).TotalCurrent.Amperes);
        return new ShuntRegulatorLoad(limit, ElectricCurrent.FromAmperes(taken), Power.FromWatts(taken * limit.Volts));
    }

    /// <summary>Everything at once for one setting: voltage over speed, each lamp lost, what a regulator would take and
    /// what is found.</summary>
    /// <param name="setting">The setting.</param>
    /// <param name="speeds">Engine speeds to look at, one or more; what is lost or regulated is looked at for the
    /// fastest.</param>
    public DirectLightingReport Report(Setting setting, IEnumerable<RotationalSpeed> speeds) =>
        DirectLightingReporter.Report(this, setting, speeds);

    private OperatingPoint SolveAt(double volts, Setting setting)
    {
        _solver.SetSupply(ElectricPotential.FromVolts(volts));
        return _solver.Solve(setting);
    }

    // Filaments and resistors take more at more voltage: one solution. An LED driver takes less.
    private double TerminalVolts(double rpm, Setting setting) =>
        Source.TerminalVolts(
            rpm,
            volts => SolveAt(volts, setting).TotalCurrent.Amperes,
            mayFall: _lit.Lamps.Any(l => l.Specification.Type is LampType.Led)
        );
}
