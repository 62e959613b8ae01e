namespace Lighting.Calc;

/// <summary>One part of a bike with a tolerance. All parts vary independently.</summary>
internal sealed class TolerancePart
{
    internal TolerancePart(PartKind kind, string name, PartSpread spread) =>
        (Kind, Name, Spread) = (kind, name, spread);

    /// <summary>Kind of part.</summary>
    public PartKind Kind { get; }

    /// <summary>Name in reports, such as <c>lamp 'tail lamp'</c>.</summary>
    public string Name { get; }

    /// <summary>Tolerance.</summary>
    public PartSpread Spread { get; }
}
