namespace Lighting.Calc;

/// <summary>Test instrument.</summary>
public enum Instrument
{
    /// <summary>A 10 MΩ voltmeter from the point to battery minus, or to a second point.</summary>
    Meter,

    /// <summary>A filament test lamp from the point to battery minus, or in the place of a fuse.</summary>
    TestLamp,

    /// <summary>An ammeter in place of a fuse.</summary>
    Ammeter,

    /// <summary>An ohmmeter across a part or between two points, battery disconnected.</summary>
    Ohmmeter,

    /// <summary>A visual check: how a lamp looks.</summary>
    Visual,

    /// <summary>A known good lamp fitted in the socket: how it looks.</summary>
    GoodLamp,

    /// <summary>The lamp out of its socket, straight on the battery: how it looks.</summary>
    Bench,

    /// <summary>The same the other way round, which matters to an LED.</summary>
    BenchReversed,

    /// <summary>A wire, contact, fuse or holder moved by hand while its lamps are watched: whether they flicker.
    /// <see cref="Reading.Seen"/> is dim where they do and normal where they are steady.</summary>
    Wiggle,
}
