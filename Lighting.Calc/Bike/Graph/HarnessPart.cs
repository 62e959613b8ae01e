namespace Lighting.Calc;

/// <summary>The list a part comes from.</summary>
internal enum HarnessPartKind
{
    /// <summary>A run.</summary>
    Run,

    /// <summary>A switch contact.</summary>
    Contact,

    /// <summary>A fuse.</summary>
    Fuse,

    /// <summary>A lamp or other load.</summary>
    Lamp,
}

/// <summary>One part of a harness between two points of its <see cref="HarnessGraph"/>.</summary>
/// <param name="Place">Its number among the parts of the graph.</param>
/// <param name="Kind">The list it comes from.</param>
/// <param name="Index">Its index in that list of the bike.</param>
/// <param name="Name">Name in reports.</param>
/// <param name="A">Number of the point that its current counts from.</param>
/// <param name="B">Number of the other point.</param>
internal sealed record HarnessPart(int Place, HarnessPartKind Kind, int Index, string Name, int A, int B)
{
    public int Other(int point) => point == A ? B : A;

    /// <summary>Whether it joins its points without a load between: not a lamp, and not an open contact.</summary>
    /// <param name="closed">The contacts that are closed.</param>
    public bool Joins(ContactSet closed) =>
        Kind == HarnessPartKind.Contact ? closed.Has(Index) : Kind != HarnessPartKind.Lamp;
}
