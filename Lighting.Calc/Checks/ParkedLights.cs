using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>The lights a bike may be left standing with: parking and full.</summary>
public static class ParkedLights
{
    // Less than this share of its light is no lamp that is lit.
    private const double Lit = 0.01;

    /// <summary>Of the settings with a lamp lit and no momentary switch held, the one of least and the one of most
    /// average load; one where they are the same, empty where there is none.</summary>
    /// <param name="points">Operating points of the bike.</param>
    /// <param name="momentarySwitches">The switches that are momentary; names compare without case.</param>
    /// <exception cref="ArgumentNullException">The points or the switches are null.</exception>
    public static ImmutableArray<Setting> Find(
        IEnumerable<OperatingPoint> points,
        IReadOnlyCollection<string> momentarySwitches
    )
    {
        ArgumentNullException.ThrowIfNull(points);
        ArgumentNullException.ThrowIfNull(momentarySwitches);
        OperatingPoint[] standing =
        [
            .. points
                .Where(p =>
                    p.Lamps.Any(l => l.RelativeLight is { DecimalFractions: > Lit })
                    && p.Setting.Positions.All(s =>
                        Name.Equal(s.Position, SwitchDefinition.Off)
                        || !momentarySwitches.Contains(s.Switch, Name.Comparer)
                    )
                )
                .OrderBy(p => Math.Round(AverageLoads.Of(p).Amperes, 6)),
        ];
        return standing.Length == 0 ? [] : [.. new[] { standing[0].Setting, standing[^1].Setting }.Distinct()];
    }
}
