using UnitsNet;

namespace Lighting.Calc;

/// <summary>How sure a lamp's volts and light are, each bike taken in the lamp's worst setting.</summary>
public sealed record LampTolerance
{
    /// <summary>The lamp.</summary>
    public required FittedLamp Lamp { get; init; }

    /// <summary>Volts across it.</summary>
    public required ResultSpread<ElectricPotential> Voltage { get; init; }

    /// <summary>The share of the source's volts that is lost before it.</summary>
    public required ResultSpread<Ratio> Drop { get; init; }

    /// <summary>Light at those volts against the same lamp's at its reference volts; null for a load that gives none. The spread of light from lamp to lamp at equal volts is not in it.</summary>
    public required ResultSpread<Ratio>? RelativeLight { get; init; }
}
