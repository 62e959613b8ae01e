
namespace Lighting.Calc;

/// <summary>What the failure or replacement of one lamp does to the rest, at one engine speed.</summary>
public sealed record DirectLightingChange
{
    /// <summary>The lamp as it was.</summary>
    public required FittedLamp Lamp { get; init; }

    /// <summary>What takes its place; null when it has failed.</summary>
    public required LampReplacement? Replacement { get; init; }

    /// <summary>Before.</summary>
    public required DirectLightingPoint Before { get; init; }

    /// <summary>After. A failed lamp is no longer among its lamps.</summary>
    public required DirectLightingPoint After { get; init; }

    /// <summary>The resistor across the coil that brings the old volts back; null where the coil is not relieved by the change.</summary>
    public required EquivalentResistor? EquivalentResistor { get; init; }
}
