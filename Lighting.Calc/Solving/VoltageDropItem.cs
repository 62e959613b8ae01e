using UnitsNet;

namespace Lighting.Calc;

/// <summary>One line of a lamp's voltage-drop breakdown: a part and its drop.</summary>
public sealed class VoltageDropItem
{
    internal VoltageDropItem(VoltageDropKind kind, string part) => (Kind, Part) = (kind, part);

    /// <summary>What sort of part.</summary>
    public VoltageDropKind Kind { get; }

    /// <summary>Name of the run, contact or fuse; <c>battery</c> for the battery.</summary>
    public string Part { get; }

    /// <summary>Its drop, positive along the lamp's own current; negative where another lamp's current runs against
    /// this one's.</summary>
    public ElectricPotential Voltage { get; internal init; }

    /// <summary>The drop as a share of the supply voltage.</summary>
    public Ratio Share { get; internal init; }

    /// <summary>Current in it, all lamps that share it together.</summary>
    public ElectricCurrent Current { get; internal init; }

    /// <summary>Largest drop of a sound part of its kind, all joints of a run together (tables/constants.csv); null for
    /// wires, fuses and the battery.</summary>
    public ElectricPotential? Limit { get; internal init; }

    /// <summary>Whether it drops more than <see cref="Limit"/>: one of the first places to clean.</summary>
    public bool IsOverLimit => Limit is { } limit && Voltage > limit;
}
