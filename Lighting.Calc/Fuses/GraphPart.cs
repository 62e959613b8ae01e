namespace Lighting.Calc.Fuses;

/// <summary>What joins two points of the harness.</summary>
internal enum GraphPartKind
{
    Run,
    Contact,
    Fuse,
}

/// <summary>One part that current can pass, as the walks see it.</summary>
/// <param name="Place">Its place among the parts of the graph.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Index">Its place in the bike's list.</param>
/// <param name="Name">Its name.</param>
/// <param name="A">One point.</param>
/// <param name="B">The other point.</param>
/// <param name="Ohms">Its resistance.</param>
internal sealed record GraphPart(int Place, GraphPartKind Kind, int Index, string Name, int A, int B, double Ohms)
{
    public int Other(int point) => point == A ? B : A;
}
