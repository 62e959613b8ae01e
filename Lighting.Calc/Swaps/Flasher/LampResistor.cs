using UnitsNet;

namespace Lighting.Calc;

/// <summary>The load resistor that one flashing LED lamp needs beside it.</summary>
internal sealed record LampResistor
{
    internal LampResistor(FittedLamp lamp, LoadResistor resistor, ElectricPotential highestVoltage) =>
        (Lamp, Resistor, HighestVoltage) = (lamp, resistor, highestVoltage);

    /// <summary>The lamp it stands beside; a lamp of several needs one for each.</summary>
    public FittedLamp Lamp { get; }

    /// <summary>The resistor.</summary>
    public LoadResistor Resistor { get; }

    /// <summary>The highest voltage it meets, by the regulator.</summary>
    public ElectricPotential HighestVoltage { get; }

    /// <summary>Its heat while lit at the highest voltage.</summary>
    public Power HighestHeat => Resistor.HeatAt(HighestVoltage);

    /// <summary>Its rating with margin; null where no usual resistor has it.</summary>
    public Power? Rating => Resistor.RatingFor(HighestVoltage);
}
