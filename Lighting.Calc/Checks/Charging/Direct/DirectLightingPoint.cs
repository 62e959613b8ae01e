using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Direct lighting at one engine speed. Voltages and currents are rms.</summary>
public sealed class DirectLightingPoint
{
    internal DirectLightingPoint() { }

    /// <summary>Engine speed.</summary>
    public RotationalSpeed Speed { get; internal init; }

    /// <summary>Voltage the coil would have with nothing on it.</summary>
    public ElectricPotential OpenVoltage { get; internal init; }

    /// <summary>Voltage at the coil's terminals.</summary>
    public ElectricPotential TerminalVoltage { get; internal init; }

    /// <summary>Current of the coil.</summary>
    public ElectricCurrent Current { get; internal init; }

    /// <summary>The lamps, in the order of the list.</summary>
    public ImmutableArray<LampState> Lamps { get; internal init; }
}
