using UnitsNet;

namespace Lighting.Calc;

/// <summary>The engine speed from which the output covers the load.</summary>
public sealed record BreakEven
{
    internal BreakEven(BreakEvenOutcome outcome, RotationalSpeed? speed, RotationalSpeed? lostAgainAt) =>
        (Outcome, Speed, LostAgainAt) = (outcome, speed, lostAgainAt);

    /// <summary>Whether there is one.</summary>
    public BreakEvenOutcome Outcome { get; }

    /// <summary>The speed for <see cref="BreakEvenOutcome.At"/>; the first point's for
    /// <see cref="BreakEvenOutcome.BelowCurve"/>; otherwise null.</summary>
    public RotationalSpeed? Speed { get; }

    /// <summary>The speed at which a falling curve drops under the load again; null where it does not.</summary>
    public RotationalSpeed? LostAgainAt { get; }
}
