
namespace Lighting.Calc;

/// <summary>A lamp that no generic LED takes the place of.</summary>
/// <param name="Lamp">The lamp, which stays.</param>
/// <param name="Reason">Why.</param>
public sealed record UnclassedLamp(FittedLamp Lamp, string Reason);
