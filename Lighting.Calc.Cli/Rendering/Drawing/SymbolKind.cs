namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>The graphical symbols of a drawing, after IEC 60617.</summary>
internal enum SymbolKind
{
    /// <summary>A plain conductor.</summary>
    Wire,

    /// <summary>Fuse, general symbol: a rectangle with the conductor through it.</summary>
    Fuse,

    /// <summary>Make contact, open in the setting drawn.</summary>
    OpenContact,

    /// <summary>Make contact, closed in the setting drawn.</summary>
    ClosedContact,

    /// <summary>Lamp, general symbol: a circle with a cross.</summary>
    Lamp,

    /// <summary>Light-emitting diode: a diode with two arrows leaving it.</summary>
    Led,

    /// <summary>Light-emitting diode with its series resistor.</summary>
    LedWithResistor,

    /// <summary>Resistor, general symbol: a rectangle.</summary>
    Resistor,

    /// <summary>Ideal current source: a circle with a stroke across. Stands for a load of constant current.</summary>
    ConstantCurrent,

    /// <summary>Battery of cells, the longer stroke positive; positive to the right.</summary>
    Battery,

    /// <summary>The same, negative to the right.</summary>
    BatteryReversed,

    /// <summary>Alternating-current source: a circle with a sine.</summary>
    Coil,

    /// <summary>Earth, general symbol, at the right end of a conductor.</summary>
    Earth,

    /// <summary>The same at the left end.</summary>
    EarthLeft,
}
