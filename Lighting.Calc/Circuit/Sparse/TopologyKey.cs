// Which elements are open, finite or merge their nodes: what a plan depends on besides the circuit.
namespace Lighting.Calc;

/// <summary>One state an element, conductors first, then loads.</summary>
internal sealed class TopologyKey(int conductors, int loads) : IEquatable<TopologyKey>
{
    private readonly byte[] states = new byte[conductors + loads];

    public Link Conductor(int i) => (Link)states[i];

    public bool LoadConnected(int i) => states[conductors + i] != (byte)Link.Open;

    /// <summary>True when this changed the key.</summary>
    public bool SetConductor(int i, Link link) => Set(i, link);

    /// <summary>True when this changed the key.</summary>
    public bool SetLoad(int i, bool connected) => Set(conductors + i, connected ? Link.Finite : Link.Open);

    public TopologyKey Copy()
    {
        var copy = new TopologyKey(conductors, states.Length - conductors);
        states.CopyTo(copy.states, 0);
        return copy;
    }

    public bool Equals(TopologyKey? other) => other is not null && states.AsSpan().SequenceEqual(other.states);

    public override bool Equals(object? obj) => Equals(obj as TopologyKey);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        hash.AddBytes(states);
        return hash.ToHashCode();
    }

    private bool Set(int i, Link link)
    {
        if (states[i] == (byte)link)
            return false;
        states[i] = (byte)link;
        return true;
    }
}
