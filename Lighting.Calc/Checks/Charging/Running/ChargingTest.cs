using UnitsNet;

namespace Lighting.Calc;

/// <summary>One charging test: what a meter across the battery and an ammeter in its lead should show.</summary>
internal sealed class ChargingTest
{
    internal ChargingTest() { }

    /// <summary>Engine speed; null with the engine off.</summary>
    public RotationalSpeed? Speed { get; internal init; }

    /// <summary>The setting.</summary>
    public Setting Setting { get; internal init; } = null!;

    /// <summary>Voltage across the battery.</summary>
    public ElectricPotential Voltage { get; internal init; }

    /// <summary>Lowest voltage of a sound bike: battery, regulator and output at the low end of their
    /// tolerances.</summary>
    public ElectricPotential LowestVoltage { get; internal init; }

    /// <summary>Highest voltage of a sound bike.</summary>
    public ElectricPotential HighestVoltage { get; internal init; }

    /// <summary>Current into the battery, negative out of it.</summary>
    public ElectricCurrent Current { get; internal init; }

    /// <summary>Lowest current of a sound bike.</summary>
    public ElectricCurrent LowestCurrent { get; internal init; }

    /// <summary>Highest current of a sound bike.</summary>
    public ElectricCurrent HighestCurrent { get; internal init; }
}
