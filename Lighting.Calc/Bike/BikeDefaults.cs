using UnitsNet;

namespace Lighting.Calc;

/// <summary>Default values of a bike, used where its lists give none.</summary>
/// <remarks>
/// Open-circuit voltage of a full six-cell lead-acid battery at rest: 12.65 V (tables/lead-acid.csv); UN Regulation 37
/// tests 12 V lamps at 13.5 V. Other systems in proportion to their nominal voltage.
/// </remarks>
internal static class BikeDefaults
{
    /// <summary>Nominal system voltage: 12 V.</summary>
    public static ElectricPotential SystemVoltage { get; } = ElectricPotential.FromVolts(12);

    /// <summary>Resistance of the battery and its posts: none.</summary>
    public static ElectricResistance BatteryResistance { get; } = ElectricResistance.Zero;

    /// <summary>Temperature of conductors without current: 20 °C, that of printed resistances.</summary>
    public static Temperature WireTemperature { get; } = Temperature.FromDegreesCelsius(20);

    /// <summary>Largest drop allowed: 5 %.</summary>
    public static Ratio AllowedDrop { get; } = Ratio.FromPercent(5);

    /// <summary>Resistance of one joint that is listed without one: 2 mΩ, a bullet terminal
    /// (tables/constants.csv).</summary>
    public static ElectricResistance JointResistance { get; } =
        ElectricResistance.FromMilliohms(Constants.Of("bullet_terminal_mohm"));

    /// <summary>Battery voltage with the engine off: 12.65 V on a 12 V system, in proportion on others.</summary>
    /// <param name="systemVoltage">Nominal system voltage.</param>
    public static ElectricPotential BatteryVoltage(ElectricPotential systemVoltage) =>
        ElectricPotential.FromVolts(12.65 * systemVoltage.Volts / 12);

    /// <summary>Voltage with the engine charging: 13.5 V on a 12 V system, in proportion on others.</summary>
    /// <param name="systemVoltage">Nominal system voltage.</param>
    public static ElectricPotential ChargingVoltage(ElectricPotential systemVoltage) =>
        ElectricPotential.FromVolts(13.5 * systemVoltage.Volts / 12);
}
