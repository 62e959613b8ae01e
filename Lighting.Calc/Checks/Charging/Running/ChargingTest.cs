using UnitsNet;

namespace Lighting.Calc;

/// <summary>One charging test: what a meter across the battery and an ammeter in its lead should show.</summary>
internal sealed class ChargingTest
{
    /// <summary>Engine speed; null with the engine off.</summary>
    public RotationalSpeed? Speed { get; init; }

    /// <summary>The setting.</summary>
    public Setting Setting { get; init; } = null!;

    /// <summary>Voltage across the battery.</summary>
    public ElectricPotential Voltage { get; init; }

    /// <summary>Lowest voltage of a sound bike: battery, regulator and output at the low end of their
    /// tolerances.</summary>
    public ElectricPotential LowestVoltage { get; init; }

    /// <summary>Highest voltage of a sound bike.</summary>
    public ElectricPotential HighestVoltage { get; init; }

    /// <summary>Current into the battery, negative out of it.</summary>
    public ElectricCurrent Current { get; init; }

    /// <summary>Lowest current of a sound bike.</summary>
    public ElectricCurrent LowestCurrent { get; init; }

    /// <summary>Highest current of a sound bike.</summary>
    public ElectricCurrent HighestCurrent { get; init; }
}
