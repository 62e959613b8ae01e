// What of a circuit carries current: settings that differ only in dead contacts share it, and with it every current.
namespace Lighting.Calc.Network;

/// <summary>The elements in the block of the source, and those that merge nodes. Equal parts of a circuit have equal currents.</summary>
internal sealed class LivePart : IEquatable<LivePart>
{
    private readonly int[] elements;
    private readonly int hash;

    /// <param name="conductors">Live conductors.</param>
    /// <param name="loads">Live loads.</param>
    /// <param name="merged">Conductors without resistance.</param>
    public LivePart(int[] conductors, int[] loads, IEnumerable<int> merged)
    {
        elements = [conductors.Length, loads.Length, .. conductors, .. loads, .. merged];
        var code = new HashCode();
        foreach (int element in elements)
            code.Add(element);
        hash = code.ToHashCode();
    }

    public bool Equals(LivePart? other) => other is not null && elements.AsSpan().SequenceEqual(other.elements);

    public override bool Equals(object? obj) => Equals(obj as LivePart);

    public override int GetHashCode() => hash;
}
