namespace Lighting.Calc;

/// <summary>A lamp that no generic LED takes the place of.</summary>
public sealed record UnclassedLamp
{
    internal UnclassedLamp(FittedLamp lamp, string reason) => (Lamp, Reason) = (lamp, reason);

    /// <summary>The lamp, which stays.</summary>
    public FittedLamp Lamp { get; }

    /// <summary>Why.</summary>
    public string Reason { get; }
}
