using UnitsNet;

namespace Lighting.Calc;

/// <summary>Time in which a small constant current takes a share of a battery's charge: t = C·s/I.</summary>
/// <remarks>
/// t: time, h. C: capacity, Ah. s: share of the charge. I: current, A. Self-discharge, which adds to it over months, is
/// left out, as the published table has it that checks it (service manual, 20 Ah battery, 7 mA to 30 mA).
/// </remarks>
internal static class ParasiticDrain
{
    /// <summary>Largest current with everything off that service manuals accept (tables/constants.csv).</summary>
    public static ElectricCurrent Accepted { get; } = ElectricCurrent.FromAmperes(Constants.Of("key_off_limit"));

    /// <summary>The time.</summary>
    public static Duration Time(ElectricCharge capacity, ElectricCurrent current, Ratio share)
    {
        if (!(capacity.AmpereHours > 0))
            throw new ArgumentOutOfRangeException(nameof(capacity), capacity, "Capacity must be greater than zero.");
        if (!(current.Amperes > 0))
            throw new ArgumentOutOfRangeException(nameof(current), current, "Current must be greater than zero.");
        return share.DecimalFractions is > 0 and <= 1
            ? Duration.FromHours(capacity.AmpereHours * share.DecimalFractions / current.Amperes)
            : throw new ArgumentOutOfRangeException(nameof(share), share, "Share must be between 0 and 1.");
    }
}
