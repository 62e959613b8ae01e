using UnitsNet;

namespace Lighting.Calc;

/// <summary>The typical values of the trade that stand in when a bike does not say: from <c>tables/constants.csv</c>,
/// where each has its source.</summary>
internal static class ChargingConstants
{
    /// <summary>Ampere-hours stored for each put in: 0.9.</summary>
    public static readonly double ChargeEfficiency = Constants.Of("charge_efficiency");

    /// <summary>Peukert exponent of a flooded battery: 1.2.</summary>
    public static readonly double PeukertExponent = Constants.Of("peukert_flooded");

    /// <summary>Drop of a silicon bridge: 1.7 V.</summary>
    public static readonly double BridgeDropVolts = Constants.Of("rectifier_drop");

    /// <summary>Lowest and highest voltage of a sound regulator on 12 V; scale with the system's voltage.</summary>
    public static readonly double LowestRegulatedVolts = Constants.Of("v_reg_12_min");

    public static readonly double HighestRegulatedVolts = Constants.Of("v_reg_12_max");

    /// <summary>Current a nearly full battery takes without gassing, amps for each ampere-hour: common practice (0.01
    /// to 0.05), no source.</summary>
    public const double FullBatteryAmperesPerAmpereHour = 0.05;

    /// <summary>That current of a bike's battery; null where its capacity is not stated.</summary>
    public static ElectricCurrent? FullBatteryCurrent(Bike bike) =>
        bike.BatteryCapacity is { AmpereHours: > 0 } capacity
            ? ElectricCurrent.FromAmperes(FullBatteryAmperesPerAmpereHour * capacity.AmpereHours)
            : null;
}
