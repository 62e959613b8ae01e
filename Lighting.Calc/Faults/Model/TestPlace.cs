namespace Lighting.Calc;

/// <summary>A test whose place is known to be on the bike.</summary>
/// <param name="Setting">The setting.</param>
/// <param name="Instrument">The instrument.</param>
/// <param name="Index">
/// Index of the point, fuse or lamp; for an ohmmeter that of <see cref="MeasuredPart"/>, or with <paramref name="To"/>
/// of the point. A test lamp in the place of a fuse has the number of points and the fuse's index.
/// </param>
/// <param name="To">The second point of meter or ohmmeter; −1 for battery minus, or for a part.</param>
/// <param name="JumperFrom">The point at one end of a jumper; −1 without one.</param>
/// <param name="JumperTo">The point at its other end.</param>
/// <param name="EngineRpm">Engine speed, zero for off; null for that of the circuit's supply.</param>
/// <param name="IsOnGenerator">Whether it is taken between leads of the unplugged generator, whose numbers are the two
/// points; 0 for the frame.</param>
/// <param name="Unplugged">The run whose connector is apart, or the lamp out of its socket: index of
/// <see cref="MeasuredPart"/>; <see cref="EveryLampOut"/> for all lamps, −1 for none.</param>
internal readonly record struct TestPlace(
    Setting Setting,
    Instrument Instrument,
    int Index,
    int To = -1,
    int JumperFrom = -1,
    int JumperTo = -1,
    double? EngineRpm = null,
    bool IsOnGenerator = false,
    int Unplugged = -1
)
{
    public bool HasJumper => JumperFrom >= 0;

    /// <summary><see cref="Unplugged"/> where every lamp is out of its socket.</summary>
    public const int EveryLampOut = -2;

    public bool IsUnplugged => Unplugged != -1;

    /// <summary>Whether the harness is as the lists have it: no jumper, and every connector together.</summary>
    public bool IsAsListed => !HasJumper && !IsUnplugged;

    /// <summary>Whether a lamp out of its socket, or a fuse out of its holder, is itself measured.</summary>
    public bool IsAlone => Instrument == Instrument.Ohmmeter && To < 0 && Unplugged == Index && IsUnplugged;

    /// <summary>Whether it looks for a way to the frame, with a connector apart or a lamp out.</summary>
    public bool IsToFrameUnplugged => IsUnplugged && To >= 0;

    /// <summary>Setting and engine: tests that are solved together.</summary>
    public (Setting Setting, double? EngineRpm) State => (Setting, EngineRpm);

    /// <summary>Whether the bike is live while it is taken.</summary>
    public bool IsLive => Instrument is not (Instrument.Ohmmeter or Instrument.Wiggle) && !IsOnBench && !IsOnGenerator;

    /// <summary>Whether every lamp is looked at, in one round of the bike.</summary>
    public bool IsEveryLamp => Instrument == Instrument.Visual && Index < 0;

    /// <summary>The look at one of the lamps of a round.</summary>
    public TestPlace OfLamp(int lamp) => this with { Index = lamp };

    /// <summary>The same place without the setting, for tests that do not depend on it.</summary>
    public bool IsOnBench => Instrument is Instrument.Bench or Instrument.BenchReversed;
}
