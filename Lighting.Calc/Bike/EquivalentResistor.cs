using UnitsNet;

namespace Lighting.Calc;

/// <summary>Resistor equivalent to a failed lamp: R = V/(I1 − I2), dissipation V²/R (Ohm's and Joule's laws).</summary>
internal sealed record EquivalentResistor
{
    internal EquivalentResistor(ElectricResistance resistance, Power power) =>
        (Resistance, Power) = (resistance, power);

    /// <summary>Resistance.</summary>
    public ElectricResistance Resistance { get; }

    /// <summary>Dissipation at the speed and voltage of the calculation; fit a rating of at least twice that (common
    /// practice, no source).</summary>
    public Power Power { get; }
}
