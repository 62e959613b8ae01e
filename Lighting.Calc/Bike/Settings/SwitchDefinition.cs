using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A switch and its positions.</summary>
/// <param name="Name">Name of the switch.</param>
/// <param name="Positions">Positions; <c>off</c> first if it has one.</param>
internal sealed record SwitchDefinition(string Name, ImmutableArray<string> Positions)
{
    /// <summary>Position that every switch has unless its contacts state otherwise
    /// (<see cref="SwitchContact.HasOff"/>).</summary>
    public const string Off = "off";

    /// <summary>Position at rest: off, or else the first.</summary>
    public string Rest => Positions[0];
}
