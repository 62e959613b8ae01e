using UnitsNet;

namespace Lighting.Calc;

/// <summary>Current a lead-acid battery takes at the regulated voltage: I = C·(1 − s) for each hour, and no less than
/// its finishing rate.</summary>
/// <remarks>
/// I: current, A. C: rated capacity, Ah. s: state of charge, 0 to 1. Source: the ampere-hour rule of charging, a
/// current of no more amperes than the ampere-hours that are missing (G. W. Vinal, Storage Batteries; from memory). The
/// finishing rate of 0.05 A for each ampere-hour is common practice (0.01 to 0.05), no source. The least a sound
/// battery takes depends on its age and temperature too, which are left out.
/// </remarks>
internal static class ChargeAcceptance
{
    /// <summary>Finishing rate, A for each Ah: common practice, no source.</summary>
    public const double FinishingRate = 0.05;

    /// <summary>The current at a state of charge.</summary>
    /// <param name="capacity">Rated capacity, above zero.</param>
    /// <param name="stateOfCharge">0 to 1.</param>
    public static ElectricCurrent Of(ElectricCharge capacity, Ratio stateOfCharge) =>
        ElectricCurrent.FromAmperes(capacity.AmpereHours * Math.Max(FinishingRate, 1 - stateOfCharge.DecimalFractions));
}
