using UnitsNet;

namespace Lighting.Calc;

/// <summary>What a lamp would gain if one part lost nothing: the most that repairing it can give.</summary>
public sealed record RepairBenefit
{
    internal RepairBenefit(VoltageDropItem entry, ElectricPotential voltage, Ratio? light) =>
        (Entry, Voltage, Light) = (entry, voltage, light);

    /// <summary>The part as it is.</summary>
    public VoltageDropItem Entry { get; }

    /// <summary>Voltage the lamp would gain.</summary>
    public ElectricPotential Voltage { get; }

    /// <summary>Light it would gain, as a share of its light at the reference voltage; null for a load that gives
    /// none.</summary>
    public Ratio? Light { get; }
}
