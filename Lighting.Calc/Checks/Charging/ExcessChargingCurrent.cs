using UnitsNet;

namespace Lighting.Calc;

/// <summary>The largest current over what the loads take, and where it goes once the battery is full.</summary>
internal sealed record ExcessChargingCurrent
{
    internal ExcessChargingCurrent() { }

    /// <summary>The setting of the smallest demand for its output.</summary>
    public Setting Setting { get; internal init; } = null!;

    /// <summary>The balance at the speed of the largest surplus.</summary>
    public BalancePoint Point { get; internal init; } = null!;

    /// <summary>Excess of one hour as a share of the battery's capacity: amps for each ampere-hour. Null without a
    /// known capacity.</summary>
    public Ratio? ShareOfCapacityPerHour { get; internal init; }
}
