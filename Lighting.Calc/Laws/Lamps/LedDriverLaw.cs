namespace Lighting.Calc;

/// <summary>LED behind a switching driver: constant power P at and above Vmin, I = P/V; below, I =
/// (P/Vmin)·(V/Vmin).</summary>
/// <remarks>
/// Source: energy balance of a switching converter; the drop-out below Vmin is this project's model of an
/// under-voltage driver. The slope is negative above Vmin, so a network of drivers can have several solutions.
/// In reverse the lamp blocks except for a leakage current.
/// </remarks>
internal static class LedDriverLaw
{
    /// <summary>Leakage conductance of a blocked LED, 1/(10 MΩ): it also keeps the nodal equations regular.</summary>
    public const double LeakSiemens = 1e-7;

    public static LawPoint At(double volts, double powerWatts, double minimumVolts)
    {
        if (volts <= 0)
            return new LawPoint(LeakSiemens * volts, LeakSiemens);
        if (volts >= minimumVolts)
        {
            double current = powerWatts / volts;
            return new LawPoint(current, -current / volts);
        }

        double siemens = powerWatts / (minimumVolts * minimumVolts);
        return new LawPoint(siemens * volts, siemens);
    }

    /// <summary>Co-content ∫₀ᵛ I dV of <see cref="At"/>, in watts.</summary>
    public static double CoContentWatts(double volts, double powerWatts, double minimumVolts)
    {
        if (volts <= 0)
            return LeakSiemens * volts * volts / 2;
        double ratio = volts / minimumVolts;
        return ratio >= 1 ? powerWatts * (0.5 + Math.Log(ratio)) : powerWatts * ratio * ratio / 2;
    }
}
