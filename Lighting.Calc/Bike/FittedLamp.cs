using UnitsNet;

namespace Lighting.Calc;

/// <summary>A lamp (or other load) as it is fitted to a bike: one row of <c>lamps.csv</c>.</summary>
public sealed record FittedLamp
{
    /// <summary>The circuit it belongs to, such as <c>headlamp</c>: loads are summed by circuit.</summary>
    public required string Circuit { get; init; }

    /// <summary>Its name, unique on the bike.</summary>
    public required string Lamp { get; init; }

    /// <summary>What one of it draws and gives.</summary>
    public required LampSpecification Specification { get; init; }

    /// <summary>How many hang in parallel on the same two points; 1 or more.</summary>
    public int Quantity { get; init; } = 1;

    /// <summary>When it is meant to be lit; <see cref="Condition.Always"/> where that is not stated. Without runs this decides; with runs the contacts decide and what is stated is checked against them.</summary>
    public Condition LitWhen { get; init; } = Condition.Always;

    /// <summary>Share of the time it is lit while switched on, 0 to 1: counts for charging and heat, never for a fuse.</summary>
    public Ratio Duty { get; init; } = Ratio.FromDecimalFractions(1);

    /// <summary>On a bike without runs: whether it is on only for moments, as a horn or stop lamp is; null goes by the switches of <see cref="LitWhen"/> or, without them, by its name and circuit (<see cref="FuseOptions.MomentarySwitches"/>). With runs the switches decide.</summary>
    public bool? Momentary { get; init; }

    /// <summary>The point its feed is connected to; ignored, and may be null, when the bike has no runs.</summary>
    public string? Feed { get; init; }

    /// <summary>The point its return is connected to; ignored, and may be null, when the bike has no runs.</summary>
    public string? Return { get; init; }
}
