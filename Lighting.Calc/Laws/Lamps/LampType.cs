namespace Lighting.Calc;

/// <summary>How a load's current answers to its volts.</summary>
public enum LampType
{
    /// <summary>Vacuum or gas-filled tungsten filament: <see cref="FilamentLaw"/>.</summary>
    Filament,

    /// <summary>Tungsten-halogen filament: the same law as <see cref="Filament"/>.</summary>
    Halogen,

    /// <summary>LED behind a switching driver, constant power above its minimum volts: <see cref="LedDriverLaw"/>.</summary>
    Led,

    /// <summary>LED behind a ballast resistor: <see cref="LedBallastLaw"/>.</summary>
    LedBallast,

    /// <summary>Constant current, such as an ignition: <see cref="FixedLoadLaw"/>.</summary>
    Fixed,

    /// <summary>Plain resistor, such as a heater or an LED load resistor.</summary>
    Resistor,
}
