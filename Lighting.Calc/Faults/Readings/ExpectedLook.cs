using UnitsNet;

namespace Lighting.Calc;

/// <summary>How a lamp looks on a healthy bike.</summary>
public sealed class ExpectedLook
{
    internal ExpectedLook(string lamp, Brightness seen, double voltage) =>
        (Lamp, Seen, Voltage) = (lamp, seen, ElectricPotential.FromVolts(voltage));

    /// <summary>The lamp.</summary>
    public string Lamp { get; }

    /// <summary>Normal or dark.</summary>
    public Brightness Seen { get; }

    /// <summary>Voltage across it, positive when its feed is on the live side.</summary>
    public ElectricPotential Voltage { get; }
}
