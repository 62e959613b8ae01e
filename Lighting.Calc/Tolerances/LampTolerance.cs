using UnitsNet;

namespace Lighting.Calc;

/// <summary>Tolerance of the voltage and light of a lamp, each sample in the worst lasting setting of the
/// lamp.</summary>
public sealed class LampTolerance
{
    internal LampTolerance(
        FittedLamp lamp,
        ResultSpread<ElectricPotential> voltage,
        ResultSpread<Ratio> drop,
        ResultSpread<Ratio>? relativeLight
    ) => (Lamp, Voltage, Drop, RelativeLight) = (lamp, voltage, drop, relativeLight);

    /// <summary>The lamp.</summary>
    public FittedLamp Lamp { get; }

    /// <summary>Voltage across it.</summary>
    public ResultSpread<ElectricPotential> Voltage { get; }

    /// <summary>Voltage drop as a share of the supply voltage.</summary>
    public ResultSpread<Ratio> Drop { get; }

    /// <summary>Light at that voltage against the same lamp's at its reference voltage; null for a load that gives
    /// none. The spread of light from lamp to lamp at equal voltage is not in it.</summary>
    public ResultSpread<Ratio>? RelativeLight { get; }
}
