namespace Lighting.Calc;

/// <summary>What makes a bike's indicators flash.</summary>
public enum FlasherKind
{
    /// <summary>The lists do not tell.</summary>
    NotStated,

    /// <summary>There is none: indicators, if any, are lit without flashing.</summary>
    None,

    /// <summary>A heated strip or wire (or a relay) that the lamps' current works: it needs its load.</summary>
    Thermal,

    /// <summary>An electronic flasher whose rate does not depend on the load.</summary>
    Electronic,
}
