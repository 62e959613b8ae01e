namespace Lighting.Calc;

/// <summary>Type of flasher.</summary>
public enum FlasherKind
{
    /// <summary>Unknown.</summary>
    NotStated,

    /// <summary>No flasher: indicators, if any, are lit continuously.</summary>
    None,

    /// <summary>Thermal or current-relay flasher, operated by the lamp current: it needs its rated load.</summary>
    Thermal,

    /// <summary>An electronic flasher whose rate does not depend on the load.</summary>
    Electronic,
}
