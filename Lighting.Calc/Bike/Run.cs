using UnitsNet;

namespace Lighting.Calc;

/// <summary>One wire between two points: one row of <c>runs.csv</c>. The return is a run of its own.</summary>
public sealed record Run
{
    /// <summary>Its name, unique on the bike.</summary>
    public required string Name { get; init; }

    /// <summary>The point it comes from; its current counts as positive from here.</summary>
    public required string From { get; init; }

    /// <summary>The point it goes to.</summary>
    public required string To { get; init; }

    /// <summary>The wire.</summary>
    public required WireSize Wire { get; init; }

    /// <summary>Length along this one wire, zero or more.</summary>
    public required Length Length { get; init; }

    /// <summary>Connectors along it, zero or more.</summary>
    public int Joints { get; init; }

    /// <summary>Resistance of each joint, zero or more.</summary>
    public ElectricResistance JointResistance { get; init; } = ElectricResistance.Zero;

    /// <summary>How many loaded wires lie together with it, itself included; 1 or more. Only the current rating depends on it.</summary>
    public int Bundle { get; init; } = 1;

    /// <summary>The kind of cable it is; null where neither its row nor the bike states it.</summary>
    public CableKind? Cable { get; init; }

    /// <summary>The colour of its insulation; null where the list does not say.</summary>
    public WireColour? Colour { get; init; }

    /// <summary>Resistance of the wire alone at a temperature, without its joints.</summary>
    /// <param name="temperature">Conductor temperature, −60 °C to 250 °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside its range, or <see cref="Length"/> is below zero.</exception>
    public ElectricResistance WireResistance(Temperature temperature) => Wire.Resistance(Length, temperature);

    /// <summary>Resistance of all its joints together.</summary>
    public ElectricResistance TotalJointResistance => JointResistance * Joints;
}
