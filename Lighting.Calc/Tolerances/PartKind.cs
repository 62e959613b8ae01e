namespace Lighting.Calc;

/// <summary>Kind of part that has a tolerance.</summary>
internal enum PartKind
{
    /// <summary>The current of a lamp or other load at any voltage; all of one row alike.</summary>
    Lamp,

    /// <summary>The resistance of one size of wire; all runs of it are from one reel.</summary>
    Wire,

    /// <summary>The temperature of all wires.</summary>
    WireTemperature,

    /// <summary>The resistance of the joints of one run.</summary>
    Joint,

    /// <summary>The resistance of one closed contact.</summary>
    Contact,

    /// <summary>The resistance of one fuse.</summary>
    Fuse,

    /// <summary>The resistance of the battery.</summary>
    BatteryResistance,

    /// <summary>The voltage of the battery with the engine off.</summary>
    BatteryVolts,

    /// <summary>The voltage with the engine charging.</summary>
    RegulatorVolts,

    /// <summary>The output of all windings at any engine speed.</summary>
    StatorOutput,
}
