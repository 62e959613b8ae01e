using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>By what a fuse is judged.</summary>
public sealed record FuseOptions
{
    /// <summary>Steady current as a share of the rating at 25 °C, above 0 to 100 %. Default 75 % (UL 248-14 practice;
    /// from memory).</summary>
    public Ratio ContinuousLoadFactor { get; init; } = Ratio.FromPercent(75);

    /// <summary>Temperature of the air round the fuse, −40 °C to 125 °C; null takes the bike's, or 25 °C.</summary>
    public Temperature? Ambient { get; init; }

    /// <summary>Temperature of the air round the wires, −40 °C and above; null takes the bike's, or 30 °C, that of the
    /// published ratings.</summary>
    public Temperature? WireAmbient { get; init; }

    /// <summary>A further limit to how long a dead short may last, above zero; null, the default, goes by what the
    /// wires withstand alone.</summary>
    public Duration? LongestShort { get; init; }

    /// <summary>Whether every glass fuse is taken as <see cref="Fuse.IsMarkedWithBlowingCurrent"/>.</summary>
    public bool GlassMarkedWithBlowingCurrent { get; init; }

    /// <summary>Names, or words of names, of switches that spring back or are held momentarily; where the lists
    /// state <see cref="SwitchContact.Momentary"/> that decides. Without case.</summary>
    public ImmutableArray<string> MomentarySwitches { get; init; } = Calc.MomentarySwitches.UsualWords;

    /// <summary>Circuits whose lamps the flasher feeds: continuously on, they count with their rms current. A load
    /// resistor listed in one of them counts as the flasher's load. Without case.</summary>
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
        "hazard",
        "hazards",
        "hazard lights",
    ];

    internal bool IsFlashing(FittedLamp lamp) => FlashingCircuits.Contains(lamp.Circuit, Name.Comparer);

    internal Temperature AirRoundFuses(Bike bike) =>
        Ambient ?? bike.AmbientTemperature ?? Temperature.FromDegreesCelsius(25);

    internal Temperature AirRoundWires(Bike bike) =>
        WireAmbient ?? bike.AmbientTemperature ?? Temperature.FromDegreesCelsius(30);

    private object?[] Figures =>
        [ContinuousLoadFactor, Ambient, WireAmbient, LongestShort, GlassMarkedWithBlowingCurrent];

    /// <inheritdoc/>
    public bool Equals(FuseOptions? other) =>
        other is not null
        && Figures.AsSpan().SequenceEqual(other.Figures)
        && MomentarySwitches.HoldsSame(other.MomentarySwitches)
        && FlashingCircuits.HoldsSame(other.FlashingCircuits);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(ContinuousLoadFactor, MomentarySwitches.HashOfParts());
}
