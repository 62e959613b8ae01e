namespace Lighting.Calc;

/// <summary>One part of a bike whose value is not exactly known. All parts differ independently of each other.</summary>
public sealed class TolerancePart
{
    internal TolerancePart(PartKind kind, string name, PartSpread spread) => (Kind, Name, Spread) = (kind, name, spread);

    /// <summary>What of the bike it is.</summary>
    public PartKind Kind { get; }

    /// <summary>Its name in reports, such as <c>lamp 'tail lamp'</c>.</summary>
    public string Name { get; }

    /// <summary>How far it may differ.</summary>
    public PartSpread Spread { get; }
}
