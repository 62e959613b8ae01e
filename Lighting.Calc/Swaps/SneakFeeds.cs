using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Finds lamps that glow, since the swap, in settings that should leave them dark.</summary>
/// <remarks>
/// One indicator lamp between the two sides is lit through the other side's lamps. Filaments there stay dark: cold,
/// they are nearly a short against it. LEDs take their share of the voltage and glow.
/// </remarks>
internal static class SneakFeeds
{
    /// <summary>Light from which a lamp that should be dark is seen to glow: common practice, no source.</summary>
    public const double VisibleLight = 0.01;

    public static ImmutableArray<SneakFeed> Of(Bike after, ImmutableArray<PointPair> pairs)
    {
        if (!after.HasNetwork)
            return [];
        var feeds = ImmutableArray.CreateBuilder<SneakFeed>();
        for (int lamp = 0; lamp < after.Lamps.Length; lamp++)
        {
            PointPair? worst = pairs
                .Where(p =>
                    Glows(p.After.Lamps[lamp])
                    && !Glows(p.Before.Lamps[lamp])
                    && !p.IsLitBefore(lamp)
                    && !Meant(after, lamp, p.After.Setting)
                )
                .MaxBy(p => p.After.Lamps[lamp].RelativeLight!.Value.DecimalFractions);
            if (worst is null)
                continue;
            // A lamp that closed parts alone do not feed stands between two loads.
            HarnessGraph graph = worst.After.Solved.Graph;
            LampState? through = worst
                .After.Lamps.Where((_, i) => i != lamp && !graph.IsFed(graph.Lamps[i], worst.After.Closed))
                .MaxBy(s => Math.Abs(s.Current.Amperes));
            feeds.Add(
                new SneakFeed(
                    worst.After.Setting,
                    worst.After.Lamps[lamp],
                    through,
                    through is null ? null : DiodePair.Remedies(after, through.Lamp, lamp, worst.After)
                )
            );
        }

        return feeds.ToImmutable();
    }

    private static bool Meant(Bike bike, int lamp, Setting setting) =>
        !bike.Lamps[lamp].LitWhen.Terms.IsEmpty && bike.Lamps[lamp].LitWhen.Holds(setting);

    public static bool Glows(LampState state) =>
        state.RelativeLight is { } light && light.DecimalFractions >= VisibleLight;
}
