namespace Lighting.Calc;

/// <summary>A test whose place is known to be on the bike.</summary>
/// <param name="Setting">The setting.</param>
/// <param name="Instrument">The instrument.</param>
/// <param name="Index">Index of the point, fuse or lamp; for an ohmmeter that of <see cref="MeasuredPart"/>.</param>
internal readonly record struct TestPlace(Setting Setting, Instrument Instrument, int Index);
