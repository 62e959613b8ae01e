using UnitsNet;

namespace Lighting.Calc;

/// <summary>What a point reads on a healthy bike.</summary>
public sealed class ExpectedReading
{
    internal ExpectedReading(
        string point,
        double voltage,
        double lowest,
        double highest,
        Brightness testLamp,
        double fromFrame
    )
    {
        (Point, TestLamp) = (point, testLamp);
        (Voltage, FromFrame) = (ElectricPotential.FromVolts(voltage), ElectricPotential.FromVolts(fromFrame));
        (Lowest, Highest) = (ElectricPotential.FromVolts(lowest), ElectricPotential.FromVolts(highest));
    }

    /// <summary>The point.</summary>
    public string Point { get; }

    /// <summary>Voltage on the meter, black lead on battery minus.</summary>
    public ElectricPotential Voltage { get; }

    /// <summary>Lower limit: two standard deviations of instrument and harness.</summary>
    public ElectricPotential Lowest { get; }

    /// <summary>Upper limit.</summary>
    public ElectricPotential Highest { get; }

    /// <summary>How a test lamp looks there, clip on battery minus.</summary>
    public Brightness TestLamp { get; }

    /// <summary>Voltage on the meter with the black lead on the frame: below zero on the live side of a positive-earth
    /// bike.</summary>
    public ElectricPotential FromFrame { get; }
}
