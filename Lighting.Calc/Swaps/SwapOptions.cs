using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>How a swap is judged.</summary>
public sealed record SwapOptions
{
    /// <summary>How both bikes are checked: the settings, the supply, fuses and charging.</summary>
    public CheckOptions Check { get; init; } = new();

    /// <summary>
    /// The circuits whose lamps the flasher feeds; names compare without case. A load resistor listed in one of them
    /// counts as its load.
    /// </summary>
    public ImmutableArray<string> FlashingCircuits { get; init; } =
    [
        "indicators",
        "indicator",
        "direction indicators",
        "turn signals",
        "turn signal",
        "turn",
        "flashers",
        "flasher",
        "winkers",
        "trafficators",
    ];

    private object?[] Figures => [Check];

    /// <inheritdoc/>
    public bool Equals(SwapOptions? other) =>
        other is not null
        && Figures.AsSpan().SequenceEqual(other.Figures)
        && FlashingCircuits.HoldsSame(other.FlashingCircuits);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Check, FlashingCircuits.HashOfParts());
}
