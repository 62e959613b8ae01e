using UnitsNet;

namespace Lighting.Calc;

/// <summary>What a fault or a tolerance changes of battery and regulator.</summary>
/// <param name="BatteryShare">Share of the battery's open-circuit voltage.</param>
/// <param name="BatteryOhms">Resistance added to the battery's.</param>
/// <param name="HeldShare">Share of the voltage that the regulator holds.</param>
/// <param name="StateOfCharge">State of charge; null for that of the options.</param>
internal readonly record struct BusChange(
    double BatteryShare,
    double BatteryOhms,
    double HeldShare,
    Ratio? StateOfCharge = null
)
{
    public static BusChange None { get; } = new(1, 0, 1);
}
