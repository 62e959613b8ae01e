namespace Lighting.Calc;

/// <summary>What kind of thing was found. <see cref="FindingWords"/> has the sentence of each kind.</summary>
public enum FindingKind
{
    /// <summary>Said by its message alone.</summary>
    Other,

    // The lists.

    /// <summary>No runs are listed, so that wires and voltage drop are not included.</summary>
    NoRuns,

    /// <summary>Points of a bike without runs are ignored.</summary>
    PointsIgnored,

    /// <summary>No <c>lit when</c> is listed, so that every lamp counts as on.</summary>
    NoLitWhen,

    /// <summary>No fuse is listed.</summary>
    NoFuse,

    /// <summary>No charging curve is listed.</summary>
    NoChargingList,

    // Lamps.

    /// <summary>The driver of an LED drops out: the voltage is too low to hold its power. Value: its voltage.</summary>
    DriverDropsOut,

    /// <summary>The driver of an LED may drop out. Value: its voltage while lit.</summary>
    DriverMayDropOut,

    /// <summary>Too large a share of the supply voltage is dropped before a lamp. Value: the share; limit: the share allowed.</summary>
    VoltageDropTooLarge,

    /// <summary>A filament has too high a voltage. Value: the voltage; limit: its rated voltage.</summary>
    LampOvervoltage,
}
