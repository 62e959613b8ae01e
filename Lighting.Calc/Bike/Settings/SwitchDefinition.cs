using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A switch and its positions.</summary>
internal sealed record SwitchDefinition
{
    internal SwitchDefinition(string name, ImmutableArray<string> positions) => (Name, Positions) = (name, positions);

    /// <summary>Name of the switch.</summary>
    public string Name { get; }

    /// <summary>Positions; <c>off</c> first if it has one.</summary>
    public ImmutableArray<string> Positions { get; }

    /// <summary>Position that every switch has unless its contacts state otherwise
    /// (<see cref="SwitchContact.HasOff"/>).</summary>
    public const string Off = "off";

    /// <summary>Position at rest: off, or else the first.</summary>
    public string Rest => Positions[0];

    /// <inheritdoc/>
    public bool Equals(SwitchDefinition? other) =>
        other is not null && Name == other.Name && Positions.HoldsSame(other.Positions);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Name, Positions.HashOfParts());
}
