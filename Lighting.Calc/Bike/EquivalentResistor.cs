using UnitsNet;

namespace Lighting.Calc;

/// <summary>A resistor that takes the load of a missing lamp: R = V/(I1 − I2), heat V²/R (Ohm's and Joule's laws).</summary>
/// <param name="Resistance">Its resistance.</param>
/// <param name="Power">Its heat at the speed and volts it was found for; fit one of at least twice that (common practice, no source).</param>
public sealed record EquivalentResistor(ElectricResistance Resistance, Power Power);
