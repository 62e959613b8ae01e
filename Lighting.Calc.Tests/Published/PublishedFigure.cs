namespace Lighting.Calc.Tests.Published;

/// <summary>One comparison with a printed figure.</summary>
/// <param name="Deviation">How far the computed value is off, as a share of the printed one; null for a limit or a
/// choice.</param>
/// <param name="Allowed">The tolerance as a share of the printed value; null likewise.</param>
/// <param name="IsMet">Whether the model meets the print within its rounding or the model's stated range; a misfit is
/// off by more and shown as such.</param>
internal sealed record PublishedFigure(double? Deviation, double? Allowed, bool IsMet = true);
