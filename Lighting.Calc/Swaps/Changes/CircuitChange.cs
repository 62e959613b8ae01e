using UnitsNet;

namespace Lighting.Calc;

/// <summary>The most that one circuit draws in any setting, before and after.</summary>
/// <param name="Circuit">The circuit.</param>
/// <param name="CurrentBefore">Most amps before.</param>
/// <param name="CurrentAfter">Most amps after.</param>
/// <param name="PowerBefore">Watts of its loads in the setting of <paramref name="CurrentBefore"/>.</param>
/// <param name="PowerAfter">Watts of its loads in the setting of <paramref name="CurrentAfter"/>.</param>
public sealed record CircuitChange(string Circuit, ElectricCurrent CurrentBefore, ElectricCurrent CurrentAfter, Power PowerBefore, Power PowerAfter);
