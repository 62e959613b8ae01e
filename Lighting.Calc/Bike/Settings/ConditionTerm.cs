using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>One part of a condition: a switch and the positions that satisfy it.</summary>
/// <param name="Switch">Name of the switch.</param>
/// <param name="Positions">Positions of which one must hold.</param>
internal sealed record ConditionTerm(string Switch, ImmutableArray<string> Positions)
{
    /// <summary>Whether the switch is in one of the positions; false for a switch that the setting does not
    /// have.</summary>
    public bool Holds(Setting setting) =>
        setting.PositionOf(Switch) is { } position && Name.IsAmong(Positions, position);

    /// <summary>Form in lists: <c>lights=low|high</c>.</summary>
    public override string ToString() => $"{Switch}={string.Join('|', Positions)}";
}
