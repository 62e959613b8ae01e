using UnitsNet;

namespace Lighting.Calc;

/// <summary>Open-circuit AC voltage between two leads of the generator at one speed.</summary>
/// <param name="Speed">Engine speed.</param>
/// <param name="Voltage">The listed voltage, rms.</param>
/// <param name="Lowest">That of a sound generator at the low end of its tolerance (tables/tolerances.csv).</param>
/// <param name="Highest">That at the high end.</param>
internal sealed record GeneratorVoltage(
    RotationalSpeed Speed,
    ElectricPotential Voltage,
    ElectricPotential Lowest,
    ElectricPotential Highest
);
