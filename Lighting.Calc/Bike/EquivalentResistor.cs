using UnitsNet;

namespace Lighting.Calc;

/// <summary>Resistor equivalent to a failed lamp: R = V/(I1 − I2), dissipation V²/R (Ohm's and Joule's laws).</summary>
/// <param name="Resistance">Resistance.</param>
/// <param name="Power">Dissipation at the speed and voltage of the calculation; fit a rating of at least twice that
/// (common practice, no source).</param>
internal sealed record EquivalentResistor(ElectricResistance Resistance, Power Power);
