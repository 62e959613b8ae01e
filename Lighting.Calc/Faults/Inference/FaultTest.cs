namespace Lighting.Calc;

/// <summary>One thing a mechanic can do: a setting, a place and an instrument.</summary>
/// <param name="Setting">The switches.</param>
/// <param name="Point">The point probed, the fuse replaced, the lamp looked at, or the part measured with the
/// ohmmeter.</param>
/// <param name="Instrument">The instrument.</param>
internal sealed record FaultTest(Setting Setting, string Point, Instrument Instrument);
