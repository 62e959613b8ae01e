namespace Lighting.Calc;

/// <summary>Constant current, such as an ignition coil's average draw, falling to zero with the voltage below half a
/// volt.</summary>
/// <remarks>The ramp below <see cref="RampVolts"/> and the block in reverse keep a dead branch at zero current: common
/// practice, no source.</remarks>
internal static class FixedLoadLaw
{
    public const double RampVolts = 0.5;

    public static LawPoint At(double volts, double amperes)
    {
        const double leak = LedDriverLaw.LeakSiemens;
        if (volts >= RampVolts)
            return new LawPoint(amperes, 0);
        return volts > 0
            ? new LawPoint(amperes * (volts / RampVolts), amperes / RampVolts)
            : new LawPoint(leak * volts, leak);
    }

    /// <summary>Co-content ∫₀ᵛ I dV of <see cref="At"/>, in watts.</summary>
    public static double CoContentWatts(double volts, double amperes)
    {
        if (volts >= RampVolts)
            return amperes * (volts - RampVolts / 2);
        return volts > 0 ? amperes * volts * volts / (2 * RampVolts) : LedDriverLaw.LeakSiemens * volts * volts / 2;
    }
}
