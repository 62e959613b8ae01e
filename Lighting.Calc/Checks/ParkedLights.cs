using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>The lights a bike may be left standing with: parking and full.</summary>
internal static class ParkedLights
{
    // Less than this share of its light is no lamp that is lit.
    private const double Lit = 0.01;

    /// <summary>Of the settings with a lamp lit and no momentary switch held, the one of least and the one of most
    /// average load; one where they are the same, empty where there is none.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="points">Its operating points.</param>
    /// <param name="fuses">What momentary switches are called; null for the defaults.</param>
    public static ImmutableArray<Setting> Find(
        Bike bike,
        IEnumerable<OperatingPoint> points,
        FuseOptions? fuses = null
    )
    {
        ArgumentNullException.ThrowIfNull(points);
        var momentary = new MomentarySwitches(bike, (fuses ?? new FuseOptions()).MomentarySwitches);
        OperatingPoint[] standing =
        [
            .. points
                .Where(p =>
                    p.Lamps.Any(l => l.RelativeLight is { DecimalFractions: > Lit })
                    && momentary.AreAtRest(p.Setting)
                )
                .OrderBy(p => Math.Round(AverageLoads.Of(p).Amperes, 6)),
        ];
        return standing.Length == 0 ? [] : [.. new[] { standing[0].Setting, standing[^1].Setting }.Distinct()];
    }
}
