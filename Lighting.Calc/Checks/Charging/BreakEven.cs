using UnitsNet;

namespace Lighting.Calc;

/// <summary>The engine speed from which the output covers the load.</summary>
/// <param name="Outcome">Whether there is one.</param>
/// <param name="Speed">The speed for <see cref="BreakEvenOutcome.At"/>; the first point's for <see cref="BreakEvenOutcome.BelowCurve"/>; otherwise null.</param>
/// <param name="LostAgainAt">The speed at which a falling curve drops under the load again; null where it does not.</param>
public sealed record BreakEven(BreakEvenOutcome Outcome, RotationalSpeed? Speed, RotationalSpeed? LostAgainAt);
