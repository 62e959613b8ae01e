using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Direct lighting at one engine speed. Volts and amps are rms.</summary>
public sealed record DirectLightingPoint
{
    /// <summary>Engine speed.</summary>
    public required RotationalSpeed Speed { get; init; }

    /// <summary>Volts the coil would have with nothing on it.</summary>
    public required ElectricPotential OpenVoltage { get; init; }

    /// <summary>Volts at the coil's terminals.</summary>
    public required ElectricPotential TerminalVoltage { get; init; }

    /// <summary>Current of the coil.</summary>
    public required ElectricCurrent Current { get; init; }

    /// <summary>The lamps, in the order of the list.</summary>
    public required ImmutableArray<LampState> Lamps { get; init; }
}
