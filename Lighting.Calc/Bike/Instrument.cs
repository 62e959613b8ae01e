namespace Lighting.Calc;

/// <summary>Test instrument.</summary>
public enum Instrument
{
    /// <summary>A 10 MΩ voltmeter from the point to battery minus.</summary>
    Meter,

    /// <summary>A filament test lamp from the point to battery minus.</summary>
    TestLamp,

    /// <summary>An ammeter in place of a fuse.</summary>
    Ammeter,

    /// <summary>An ohmmeter across a part, battery disconnected.</summary>
    Ohmmeter,

    /// <summary>A visual check: how a lamp looks.</summary>
    Visual,
}
