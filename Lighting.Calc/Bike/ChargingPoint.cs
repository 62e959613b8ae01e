using UnitsNet;

namespace Lighting.Calc;

/// <summary>Output of the charging system at one engine speed: one row of <c>charging.csv</c>.</summary>
/// <param name="Speed">Engine speed, zero or more.</param>
/// <param name="Current">Output at <see cref="Voltage"/>, zero or more.</param>
/// <param name="When">The settings in which this winding works; points with the same condition form one curve, and the
/// curves that hold add up.</param>
public sealed record ChargingPoint(RotationalSpeed Speed, ElectricCurrent Current, Condition When)
{
    /// <summary>Remark of the list, which no calculation uses; null if there is none.</summary>
    public string? Notes { get; init; }

    /// <summary>Voltage at which the current was taken, above zero; null for the charging voltage.</summary>
    public ElectricPotential? Voltage { get; init; }

    /// <summary>AC voltage (rms) between two leads of the unplugged generator at this speed, above zero; null where not
    /// stated.</summary>
    public ElectricPotential? OpenVoltage { get; init; }
}
