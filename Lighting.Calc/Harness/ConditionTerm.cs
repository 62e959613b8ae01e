using System.Collections.Immutable;

namespace Lighting.Calc.Harness;

/// <summary>One part of a condition: a switch and the positions that satisfy it.</summary>
/// <param name="Switch">Name of the switch.</param>
/// <param name="Positions">Positions of which one must hold.</param>
public sealed record ConditionTerm(string Switch, ImmutableArray<string> Positions)
{
    /// <summary>The form lists use: <c>lights=low|high</c>.</summary>
    public override string ToString() => $"{Switch}={string.Join('|', Positions)}";
}
