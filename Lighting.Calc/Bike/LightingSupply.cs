namespace Lighting.Calc;

/// <summary>What feeds the lamps.</summary>
public enum LightingSupply
{
    /// <summary>The battery, kept up by the charging system.</summary>
    Battery,

    /// <summary>The generator's lighting coil straight, by alternating current and without a battery; <see cref="Bike.BatteryPlus"/> and
    /// <see cref="Bike.BatteryMinus"/> then name the coil's two ends and the charging list is the coil's output at the charging volts.</summary>
    Direct,
}
