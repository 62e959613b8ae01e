using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>One contact of a switch: one row of <c>switches.csv</c>.</summary>
public sealed record SwitchContact
{
    /// <summary>The switch it belongs to; several contacts may share one.</summary>
    public required string Switch { get; init; }

    /// <summary>The point on one side.</summary>
    public required string From { get; init; }

    /// <summary>The point on the other side.</summary>
    public required string To { get; init; }

    /// <summary>The positions in which the contact is closed.</summary>
    public required ImmutableArray<string> ClosedIn { get; init; }

    /// <summary>Whether its switch can be off; false for one that is always in one of its positions, such as a dip
    /// switch. One contact that says false decides for the switch.</summary>
    public bool HasOff { get; init; } = true;

    /// <summary>Whether its switch springs back or is held momentarily, as a horn or brake switch is; null goes by
    /// the name of the switch (<see cref="FuseOptions.MomentarySwitches"/>). The first contact of a switch that says so
    /// decides for it.</summary>
    public bool? Momentary { get; init; }

    /// <summary>Whether it is a contact of a relay: then <see cref="Switch"/> names the relay's coil among the lamps,
    /// and it is closed <c>in</c> or <c>out</c>, as the coil is fed or not.</summary>
    public bool IsRelay { get; init; }

    /// <summary>Resistance of the closed contact, zero or more.</summary>
    public ElectricResistance Resistance { get; init; } = ElectricResistance.Zero;

    /// <summary>Remark of the list, which no calculation uses; null if there is none.</summary>
    public string? Notes { get; init; }

    /// <summary>Whether it is closed in a setting; a switch that the setting does not have leaves it open, and so does
    /// a relay, which is no switch.</summary>
    /// <param name="setting">The setting.</param>
    public bool IsClosed(Setting setting) =>
        setting.PositionOf(Switch) is { } position && Calc.Name.IsAmong(ClosedIn, position);

    /// <summary>Name in reports: the switch and its two points.</summary>
    public string Name => $"{Switch} ({From} to {To})";

    /// <inheritdoc/>
    public bool Equals(SwitchContact? other) =>
        other is not null
        && (Switch, From, To, HasOff, Momentary, IsRelay, Notes)
            == (other.Switch, other.From, other.To, other.HasOff, other.Momentary, other.IsRelay, other.Notes)
        && EqualityComparer<ElectricResistance>.Default.Equals(Resistance, other.Resistance)
        && ClosedIn.HoldsSame(other.ClosedIn);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Switch, From, To);
}
