using MathNet.Numerics.RootFinding;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A permanent-magnet lighting coil as a source of alternating current: an EMF behind a resistance and a
/// reactance.</summary>
/// <remarks>
/// E = k·n, X = l·n, E² = (V + I·R)² + (I·X)². E: EMF, V rms. n: engine speed. V: terminal voltage, rms. I: current, A
/// rms. R: resistance of the coil. X: its reactance ωL. The load is resistive: a filament is too slow to follow the
/// wave. It is the <see cref="PermanentMagnetAlternator"/> with k/l = Imax, as seen from its terminals. Source: phasor
/// diagram of the unsaturated round-rotor synchronous machine at unity power factor. Not valid where the iron
/// saturates, or for the pulses of a rectifier or an LED.
/// </remarks>
internal sealed record AlternatorEquivalent
{
    private const int ScanSteps = 100;

    private readonly double _voltsPerRpm;
    private readonly double _ohmsPerRpm;

    /// <summary>Creates a source from measurements at one speed.</summary>
    /// <param name="speed">The speed, above zero.</param>
    /// <param name="openVoltage">Open-circuit voltage (rms) at that speed, above zero.</param>
    /// <param name="reactance">Reactance of the coil at that speed, above zero: open-circuit voltage divided by
    /// short-circuit current where the resistance is small.</param>
    /// <param name="coilResistance">Resistance of the coil, zero or more.</param>
    public AlternatorEquivalent(
        RotationalSpeed speed,
        ElectricPotential openVoltage,
        ElectricResistance reactance,
        ElectricResistance coilResistance
    )
    {
        if (!(speed.RevolutionsPerMinute > 0))
            throw new ArgumentOutOfRangeException(nameof(speed), speed, "Speed must be greater than zero.");
        if (!(openVoltage.Volts > 0))
            throw new ArgumentOutOfRangeException(
                nameof(openVoltage),
                openVoltage,
                "Open-circuit voltage must be greater than zero."
            );
        if (!(reactance.Ohms > 0))
            throw new ArgumentOutOfRangeException(nameof(reactance), reactance, "Reactance must be greater than zero.");
        if (!(coilResistance.Ohms >= 0))
            throw new ArgumentOutOfRangeException(
                nameof(coilResistance),
                coilResistance,
                "Coil resistance must be zero or more."
            );
        _voltsPerRpm = openVoltage.Volts / speed.RevolutionsPerMinute;
        _ohmsPerRpm = reactance.Ohms / speed.RevolutionsPerMinute;
        CoilResistance = coilResistance;
    }

    private AlternatorEquivalent(double voltsPerRpm, double ohmsPerRpm, ElectricResistance coilResistance) =>
        (_voltsPerRpm, _ohmsPerRpm, CoilResistance) = (voltsPerRpm, ohmsPerRpm, coilResistance);

    /// <summary>Resistance of the coil.</summary>
    public ElectricResistance CoilResistance { get; }

    /// <summary>Short-circuit current at high speed, k/l.</summary>
    public ElectricCurrent MaximumCurrent => ElectricCurrent.FromAmperes(_voltsPerRpm / _ohmsPerRpm);

    /// <summary>Open-circuit voltage, rms.</summary>
    public ElectricPotential OpenVoltageAt(RotationalSpeed speed) =>
        ElectricPotential.FromVolts(_voltsPerRpm * speed.RevolutionsPerMinute);

    /// <summary>Reactance of the coil.</summary>
    public ElectricResistance ReactanceAt(RotationalSpeed speed) =>
        ElectricResistance.FromOhms(_ohmsPerRpm * speed.RevolutionsPerMinute);

    /// <summary>Output current at a terminal voltage; null if the EMF does not reach it.</summary>
    public ElectricCurrent? CurrentAt(RotationalSpeed speed, ElectricPotential terminalVoltage) =>
        AmperesAt(speed.RevolutionsPerMinute, terminalVoltage.Volts) is { } amperes
            ? ElectricCurrent.FromAmperes(amperes)
            : null;

    /// <summary><see cref="CurrentAt"/> for the fit, which asks it many times.</summary>
    internal double? AmperesAt(double rpm, double volts)
    {
        double emf = _voltsPerRpm * rpm,
            resistance = CoilResistance.Ohms,
            reactance = _ohmsPerRpm * rpm;
        if (emf < volts)
            return null;
        if (emf == 0)
            return 0;
        // I²·(R² + X²) + 2·I·V·R + V² − E² = 0, the root of zero or more, in the form that does not lose digits.
        double a = resistance * resistance + reactance * reactance,
            half = volts * resistance,
            rest = emf * emf - volts * volts;
        return rest == 0 ? 0 : rest / (half + Math.Sqrt(half * half + a * rest));
    }

    /// <summary>Speed for a current at a terminal voltage, n = (V + I·R)/√(k² − I²·l²); null if never
    /// reached.</summary>
    /// <param name="current">The current, zero or more; for zero it is the cut-in speed.</param>
    /// <param name="terminalVoltage">Voltage (rms), zero or more.</param>
    public RotationalSpeed? SpeedFor(ElectricCurrent current, ElectricPotential terminalVoltage)
    {
        double amperes = current.Amperes,
            squared = _voltsPerRpm * _voltsPerRpm - Math.Pow(amperes * _ohmsPerRpm, 2);
        return squared > 0
            ? RotationalSpeed.FromRevolutionsPerMinute(
                (terminalVoltage.Volts + amperes * CoilResistance.Ohms) / Math.Sqrt(squared)
            )
            : null;
    }

    /// <summary>The same coil with a share of its EMF (weaker magnets) and an added series resistance.</summary>
    internal AlternatorEquivalent Weakened(double share, double addedOhms) =>
        new(share * _voltsPerRpm, _ohmsPerRpm, CoilResistance + ElectricResistance.FromOhms(addedOhms));

    /// <summary>Terminal voltage (rms) at which output and load are equal; the highest if there are several, as with
    /// LED drivers.</summary>
    /// <param name="rpm">Engine speed, zero or more.</param>
    /// <param name="amperesAt">Load current at a terminal voltage.</param>
    /// <param name="mayFall">Whether the load current may fall with rising voltage, as with an LED driver: the search
    /// is then from the top down.</param>
    internal double TerminalVolts(double rpm, Func<double, double> amperesAt, bool mayFall)
    {
        double open = _voltsPerRpm * rpm;
        if (open == 0)
            return 0;
        if (Excess(open) <= 0)
            return open;
        if (!mayFall)
            return Brent.FindRoot(Excess, 0, open, 1e-10, 200);
        double above = open;
        for (int i = 1; i <= ScanSteps; i++)
        {
            double below = open * (ScanSteps - i) / ScanSteps;
            if (Excess(below) <= 0)
                return Brent.FindRoot(Excess, below, above, 1e-10, 200);
            above = below;
        }

        throw new InvalidOperationException($"No terminal voltage was found at {rpm} rpm.");

        double Excess(double volts) => this.Excess(rpm, volts, amperesAt(volts));
    }

    /// <summary>(V + I·R)² + (I·X)² − E²: zero at the terminal voltage, above zero when the load takes more than the
    /// source gives.</summary>
    private double Excess(double rpm, double volts, double amperes)
    {
        double real = volts + amperes * CoilResistance.Ohms,
            reactive = amperes * _ohmsPerRpm * rpm,
            emf = _voltsPerRpm * rpm;
        return real * real + reactive * reactive - emf * emf;
    }
}
