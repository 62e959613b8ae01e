using UnitsNet;

namespace Lighting.Calc;

/// <summary>Peukert's law: t = H·(C/(I·H))^k, run time of a lead-acid battery at constant current.</summary>
/// <remarks>
/// t: time from full to empty. C: rated capacity, given in the rated time H (10 h or 20 h). I: current. k: exponent,
/// 1 for an ideal battery, about 1.1 to 1.3 for lead-acid. Source: W. Peukert, Elektrotechnische Zeitschrift 18
/// (1897) 287, in the form that refers to the rated time. Valid for constant currents of about the rated one up to a
/// few times C per hour at constant temperature; below the rated current it gives more than the rated capacity.
/// </remarks>
internal static class PeukertLaw
{
    /// <summary>Run time of a full battery at constant current.</summary>
    /// <param name="capacity">Rated capacity, above zero.</param>
    /// <param name="ratedTime">The time in which it gives that capacity, above zero.</param>
    /// <param name="exponent">Peukert's exponent, 1 or more.</param>
    /// <param name="current">The current, above zero.</param>
    public static Duration DischargeTime(
        ElectricCharge capacity,
        Duration ratedTime,
        double exponent,
        ElectricCurrent current
    )
    {
        if (!(capacity.AmpereHours > 0))
            throw new ArgumentOutOfRangeException(nameof(capacity), capacity, "Capacity must be greater than zero.");
        if (!(ratedTime.Hours > 0))
            throw new ArgumentOutOfRangeException(
                nameof(ratedTime),
                ratedTime,
                "Rated time must be greater than zero."
            );
        if (!(exponent >= 1))
            throw new ArgumentOutOfRangeException(nameof(exponent), exponent, "Peukert exponent must be 1 or more.");
        if (!(current.Amperes > 0))
            throw new ArgumentOutOfRangeException(nameof(current), current, "Current must be greater than zero.");
        return Duration.FromHours(
            ratedTime.Hours * Math.Pow(capacity.AmpereHours / (current.Amperes * ratedTime.Hours), exponent)
        );
    }
}
