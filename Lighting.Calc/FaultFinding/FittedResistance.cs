using UnitsNet;

namespace Lighting.Calc.FaultFinding;

/// <summary>A resistance fitted to readings.</summary>
/// <param name="Best">The likeliest.</param>
/// <param name="Low">It lies above this with 95 % probability.</param>
/// <param name="High">It lies below this with 95 % probability; null when it may as well be open.</param>
public sealed record FittedResistance(ElectricResistance Best, ElectricResistance Low, ElectricResistance? High);
