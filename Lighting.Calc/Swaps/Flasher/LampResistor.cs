using UnitsNet;

namespace Lighting.Calc;

/// <summary>The load resistor that one flashing LED lamp needs beside it.</summary>
/// <param name="Lamp">The lamp it stands beside; a lamp of several needs one for each.</param>
/// <param name="Resistor">The resistor.</param>
/// <param name="HighestVoltage">The highest voltage it meets, by the regulator.</param>
internal sealed record LampResistor(FittedLamp Lamp, LoadResistor Resistor, ElectricPotential HighestVoltage)
{
    /// <summary>Its heat while lit at the highest voltage.</summary>
    public Power HighestHeat => Resistor.HeatAt(HighestVoltage);

    /// <summary>Its rating with margin; null where no usual resistor has it.</summary>
    public Power? Rating => Resistor.RatingFor(HighestVoltage);
}
