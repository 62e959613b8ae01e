using UnitsNet;

namespace Lighting.Calc;

/// <summary>One charging test: what a meter across the battery and an ammeter in its lead should show.</summary>
/// <param name="Speed">Engine speed; null with the engine off.</param>
/// <param name="Setting">The setting.</param>
/// <param name="Voltage">Voltage across the battery.</param>
/// <param name="LowestVoltage">Lowest voltage of a sound bike: battery, regulator and output at the low end of their
/// tolerances.</param>
/// <param name="HighestVoltage">Highest voltage of a sound bike.</param>
/// <param name="Current">Current into the battery, negative out of it.</param>
/// <param name="LowestCurrent">Lowest current of a sound bike.</param>
/// <param name="HighestCurrent">Highest current of a sound bike.</param>
internal sealed record ChargingTest(
    RotationalSpeed? Speed,
    Setting Setting,
    ElectricPotential Voltage,
    ElectricPotential LowestVoltage,
    ElectricPotential HighestVoltage,
    ElectricCurrent Current,
    ElectricCurrent LowestCurrent,
    ElectricCurrent HighestCurrent
);
