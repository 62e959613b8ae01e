namespace Lighting.Calc;

/// <summary>LED with series resistor: I = (V − Vf)/R above the forward voltage Vf, dark below.</summary>
/// <remarks>Source: Ohm's law on the resistor, R = (Vs − n·Vf)/If. Below Vf and in reverse only a leakage current
/// flows.</remarks>
internal static class LedResistorLaw
{
    public static LawPoint At(double volts, double forwardVolts, double ballastOhms)
    {
        const double leak = LedDriverLaw.LeakSiemens;
        return volts > forwardVolts
            ? new LawPoint((volts - forwardVolts) / ballastOhms + leak * volts, 1 / ballastOhms + leak)
            : new LawPoint(leak * volts, leak);
    }

    /// <summary>Co-content ∫₀ᵛ I dV of <see cref="At"/>, in watts.</summary>
    public static double CoContentWatts(double volts, double forwardVolts, double ballastOhms)
    {
        double above = Math.Max(0, volts - forwardVolts);
        return above * above / (2 * ballastOhms) + LedDriverLaw.LeakSiemens * volts * volts / 2;
    }
}
