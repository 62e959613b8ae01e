using UnitsNet;

namespace Lighting.Calc;

/// <summary>One wire between two points: one row of <c>runs.csv</c>. The return is a separate run.</summary>
public sealed record Run
{
    /// <summary>Name, unique on the bike.</summary>
    public required string Name { get; init; }

    /// <summary>Start point; its current is positive from here.</summary>
    public required string From { get; init; }

    /// <summary>End point.</summary>
    public required string To { get; init; }

    /// <summary>The wire.</summary>
    public required WireSize Wire { get; init; }

    /// <summary>Whether its wire is still to be chosen, as its list leaves the cell blank: <see cref="Wire"/> is then a
    /// stand-in, and only <see cref="HarnessSizing"/> may use the run.</summary>
    public bool WireIsOpen { get; init; }

    /// <summary>Length along this one wire, zero or more.</summary>
    public required Length Length { get; init; }

    /// <summary>Number of joints, zero or more.</summary>
    public int Joints { get; init; }

    /// <summary>Resistance of each joint, zero or more.</summary>
    public ElectricResistance JointResistance { get; init; } = ElectricResistance.Zero;

    /// <summary>Whether <see cref="JointResistance"/> is the typical value of the trade, as the list states
    /// none.</summary>
    public bool AssumesJoints { get; init; }

    /// <summary>Number of wires in its bundle, itself included; 1 or more. All of them are loaded unless
    /// <see cref="BundleLoading"/> says less. It affects the current rating, and how warm the wire gets.</summary>
    public int Bundle { get; init; } = 1;

    /// <summary>Share of the bundle's capacity in use, 20 % to 100 %; null where all of its wires are loaded.</summary>
    public Ratio? BundleLoading { get; init; }

    /// <summary>The kind of cable it is; null where neither its row nor the bike states it.</summary>
    public CableKind? Cable { get; init; }

    /// <summary>Colour of the insulation; null if not listed.</summary>
    public WireColour? Colour { get; init; }

    /// <summary>Remark of the list, which no calculation uses; null if there is none.</summary>
    public string? Notes { get; init; }

    /// <summary>Terminal at <see cref="From"/>, such as <c>ring 6 mm</c>; null if not listed.</summary>
    public string? FromEnd { get; init; }

    /// <summary>Terminal at <see cref="To"/>; null if not listed.</summary>
    public string? ToEnd { get; init; }

    /// <summary>Resistance of the wire alone at a temperature, without its joints.</summary>
    /// <param name="temperature">Conductor temperature, −60 °C to 250 °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside its range, or <see cref="Length"/> is
    /// below zero.</exception>
    public ElectricResistance WireResistance(Temperature temperature) => Wire.Resistance(Length, temperature);

    /// <summary>The current rating of its wire, or of another in its place.</summary>
    internal CurrentRating RatingOf(WireSize wire, Temperature ambient, CableKind? cable) =>
        CurrentRating.Calculate(wire, ambient, Bundle, cable, BundleLoading);

    /// <summary>Resistance of all its joints together.</summary>
    public ElectricResistance TotalJointResistance => JointResistance * Joints;
}
