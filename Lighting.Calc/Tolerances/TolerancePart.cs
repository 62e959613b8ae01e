namespace Lighting.Calc;

/// <summary>One part of a bike whose value is not exactly known. All parts differ independently of each other.</summary>
/// <param name="Kind">What of the bike it is.</param>
/// <param name="Name">Its name in reports, such as <c>lamp 'tail lamp'</c>.</param>
/// <param name="Spread">How far it may differ.</param>
public sealed record TolerancePart(PartKind Kind, string Name, PartSpread Spread);
