namespace Lighting.Calc;

/// <summary>One part of a bike with a tolerance. All parts vary independently.</summary>
/// <param name="Kind">Kind of part.</param>
/// <param name="Name">Name in reports, such as <c>lamp 'tail lamp'</c>.</param>
/// <param name="Spread">Tolerance.</param>
internal sealed record TolerancePart(PartKind Kind, string Name, PartSpread Spread);
