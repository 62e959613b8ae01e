namespace Lighting.Calc;

/// <summary>Supply of the lamps.</summary>
public enum LightingSupply
{
    /// <summary>The battery, kept up by the charging system.</summary>
    Battery,

    /// <summary>AC direct lighting from the lighting coil of the generator, without a battery;
    /// <see cref="Bike.BatteryPlus"/> and
    /// <see cref="Bike.BatteryMinus"/> are then the two ends of the coil, and the charging list is its output at the
    /// charging voltage.</summary>
    Direct,
}
