using UnitsNet;

namespace Lighting.Calc;

/// <summary>A point of the harness at one operating point.</summary>
/// <param name="Point">The point.</param>
/// <param name="Voltage">Volts to battery minus, on a positive-earth bike too; a part that is cut off reads 0 V.</param>
public sealed record NodeVoltage(string Point, ElectricPotential Voltage);
