namespace Lighting.Calc.Tests.Published;

/// <summary>One comparison with a printed figure.</summary>
/// <param name="Deviation">How far the computed value is off, as a share of the printed one; null for a limit or a
/// choice that was met.</param>
/// <param name="Allowed">The tolerance as a share of the printed value; null likewise.</param>
internal sealed record PublishedFigure(double? Deviation, double? Allowed);
