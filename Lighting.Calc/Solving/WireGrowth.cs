namespace Lighting.Calc;

/// <summary>How the resistance of one wire grows with its current.</summary>
/// <param name="Rated">Its rating, in amperes; 0 where none is published, so that it stays as it is.</param>
/// <param name="Most">Growth at the rating, as a share of the resistance without current.</param>
/// <param name="Rule">How it grows up to there.</param>
internal readonly record struct WireGrowth(double Rated, double Most, ConductorHeatRule Rule)
{
    /// <summary>The growth of a run, or of another wire in its place, on a bike whose wires warm.</summary>
    public static WireGrowth Of(Bike bike, Run run, WireSize wire, ConductorHeatRule rule) =>
        ConductorHeat.Limit(wire, run.Bundle, run.BundleLoading) is { } limit
            ? new WireGrowth(
                limit.Amperes,
                limit.Kelvins
                    * Copper.TemperatureCoefficientPerKelvinAt20
                    / Copper.ResistanceFactorAt(bike.WireTemperature.DegreesCelsius),
                rule
            )
            : default;

    /// <summary>Resistance with a current over that without.</summary>
    public double At(double amperes) => Rated > 0 ? 1 + Most * ConductorHeat.Share(amperes, Rated, Rule) : 1;
}
