namespace Lighting.Calc;

/// <summary>What the failure of one lamp does to the rest, at one engine speed.</summary>
public sealed record DirectLightingChange
{
    internal DirectLightingChange() { }

    /// <summary>The lamp as it was.</summary>
    public FittedLamp Lamp { get; internal init; } = null!;

    /// <summary>Before.</summary>
    public DirectLightingPoint Before { get; internal init; } = null!;

    /// <summary>After. The lamp is no longer among its lamps.</summary>
    public DirectLightingPoint After { get; internal init; } = null!;

    /// <summary>The resistor across the coil that brings the old voltage back; null where it is not relieved.</summary>
    internal EquivalentResistor? EquivalentResistor { get; init; }
}
