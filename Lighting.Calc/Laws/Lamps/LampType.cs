namespace Lighting.Calc;

/// <summary>Current–voltage law of a load.</summary>
public enum LampType
{
    /// <summary>Vacuum or gas-filled tungsten filament.</summary>
    Filament,

    /// <summary>Tungsten-halogen filament: the same current as <see cref="Filament"/>, light and life of its
    /// own.</summary>
    Halogen,

    /// <summary>LED behind a switching driver, constant power above its minimum voltage.</summary>
    Led,

    /// <summary>LED with series resistor.</summary>
    LedResistor,

    /// <summary>Constant current, such as an ignition.</summary>
    Fixed,

    /// <summary>Plain resistor, such as a heater or an LED load resistor.</summary>
    Resistor,
}
