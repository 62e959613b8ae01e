using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>One part of a condition: a switch and the positions that satisfy it.</summary>
public sealed record ConditionTerm
{
    internal ConditionTerm(string @switch, ImmutableArray<string> positions) =>
        (Switch, Positions) = (@switch, positions);

    /// <summary>Name of the switch.</summary>
    public string Switch { get; }

    /// <summary>Positions of which one must hold.</summary>
    public ImmutableArray<string> Positions { get; }

    /// <summary>Whether the switch is in one of the positions; false for a switch that the setting does not
    /// have.</summary>
    /// <param name="setting">The setting.</param>
    public bool Holds(Setting setting) =>
        setting.PositionOf(Switch) is { } position && Name.IsAmong(Positions, position);

    /// <summary>Form in lists: <c>lights=low|high</c>.</summary>
    public override string ToString() => $"{Switch}={string.Join('|', Positions)}";

    /// <inheritdoc/>
    public bool Equals(ConditionTerm? other) =>
        other is not null && Switch == other.Switch && Positions.HoldsSame(other.Positions);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Switch, Positions.HashOfParts());
}
