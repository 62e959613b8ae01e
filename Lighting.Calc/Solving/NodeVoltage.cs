using UnitsNet;

namespace Lighting.Calc;

/// <summary>A point of the harness at one operating point.</summary>
public sealed record NodeVoltage
{
    internal NodeVoltage(string point, ElectricPotential voltage) => (Point, Voltage) = (point, voltage);

    /// <summary>The point.</summary>
    public string Point { get; }

    /// <summary>Voltage to battery minus, on a positive-earth bike too; a part that is cut off reads 0 V.</summary>
    public ElectricPotential Voltage { get; }
}
