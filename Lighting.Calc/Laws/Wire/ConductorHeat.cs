using UnitsNet;

namespace Lighting.Calc;

/// <summary>By how much a continuous current warms a conductor.</summary>
/// <remarks>
/// Formula: rise = (t_p − 30 °C) · (I / I_z)², with I_z the rating of the wire in 30 °C air, its bundle counted, and
/// t_p the limit of its insulation on which that rating stands.
/// Source: BS 7671, appendix 4, 6.1, the operating temperature behind the factor C_t. The square-root rule,
/// (t_p − 30 °C) · √(I / I_z), is that of AC 43.13-1B, paragraph 11-66.
/// Valid up to the rating: beyond it the limit of the insulation is taken, since a wire loaded beyond its rating is a
/// finding of its own. A single wire spaced in free air is assumed, whatever the kind of cable: its rating is the one
/// that stands on a temperature.
/// </remarks>
internal static class ConductorHeat
{
    private const double ReferenceCelsius = 30;

    /// <summary>The rating in 30 °C air and the rise at it; null where no rating is published.</summary>
    internal static (double Amperes, double Kelvins)? Limit(WireSize wire, int bundle, Ratio? loading = null) =>
        CurrentRating.Calculate(
            wire,
            Temperature.FromDegreesCelsius(ReferenceCelsius),
            bundle,
            CableKind.FreeAir,
            loading
        )
            is { Current: { Amperes: > 0 } rated, ConductorLimit: { } limit }
            ? (rated.Amperes, limit.DegreesCelsius - ReferenceCelsius)
            : null;

    /// <summary>The rise as a share of that at the rating, 0 to 1.</summary>
    internal static double Share(double amperes, double rated, ConductorHeatRule rule)
    {
        double load = Math.Min(1, Math.Abs(amperes) / rated);
        return rule == ConductorHeatRule.SquareRoot ? Math.Sqrt(load) : load * load;
    }
}
