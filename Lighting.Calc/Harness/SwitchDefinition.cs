using System.Collections.Immutable;

namespace Lighting.Calc.Harness;

/// <summary>A switch and every position it can stand in.</summary>
/// <param name="Name">Name of the switch.</param>
/// <param name="Positions">Its positions; <c>off</c> first.</param>
public sealed record SwitchDefinition(string Name, ImmutableArray<string> Positions)
{
    /// <summary>The position every switch has, in which no contact is made.</summary>
    public const string Off = "off";
}
