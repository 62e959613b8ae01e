using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A switch and every position it can stand in.</summary>
/// <param name="Name">Name of the switch.</param>
/// <param name="Positions">Its positions; <c>off</c> first where it has that.</param>
public sealed record SwitchDefinition(string Name, ImmutableArray<string> Positions)
{
    /// <summary>The position that every switch has whose contacts do not say otherwise (<see cref="SwitchContact.HasOff"/>).</summary>
    public const string Off = "off";

    /// <summary>The position it stands in when nothing is said: off, or else its first.</summary>
    public string Rest => Positions[0];
}
