using UnitsNet;

namespace Lighting.Calc;

/// <summary>The typical values of the trade that stand in when a bike does not tell: from <c>tables/constants.csv</c>,
/// where each has its source.</summary>
internal static class ChargingConstants
{
    /// <summary>Ampere-hours stored for each put in: 0.9.</summary>
    public static readonly double ChargeEfficiency = Value("charge_efficiency");

    /// <summary>Peukert exponent of a flooded battery: 1.2.</summary>
    public static readonly double PeukertExponent = Value("peukert_flooded");

    /// <summary>Drop of a silicon bridge: 1.7 V.</summary>
    public static readonly double BridgeDropVolts = Value("rectifier_drop");

    /// <summary>Lowest and highest volts of a sound regulator on 12 V; scale with the system's volts.</summary>
    public static readonly double LowestRegulatedVolts = Value("v_reg_12_min");

    public static readonly double HighestRegulatedVolts = Value("v_reg_12_max");

    /// <summary>Current a nearly full battery takes without gassing, amps for each ampere-hour: common practice (0.01
    /// to 0.05), no source.</summary>
    public const double FullBatteryAmperesPerAmpereHour = 0.05;

    /// <summary>That current of a bike's battery; null where its capacity is not stated.</summary>
    public static ElectricCurrent? FullBatteryCurrent(Bike bike) =>
        bike.BatteryCapacity is { AmpereHours: > 0 } capacity
            ? ElectricCurrent.FromAmperes(FullBatteryAmperesPerAmpereHour * capacity.AmpereHours)
            : null;

    private static double Value(string symbol) =>
        PublishedTable.Load("constants").Read().Single(r => r.Text("symbol") == symbol).Number("value");
}
