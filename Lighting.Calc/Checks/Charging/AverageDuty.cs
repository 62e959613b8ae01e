using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The share of a ride for which each load counts in an average.</summary>
internal static class AverageDuty
{
    /// <summary>Share of a load that only a momentary switch turns on and whose duty is not listed
    /// (tables/constants.csv).</summary>
    public static readonly Ratio Momentary = Ratio.FromPercent(Constants.Of("momentary_duty"));

    /// <summary>The share of each lamp: as listed, else that of a momentary load, else all of the time.</summary>
    public static double[] Of(Bike bike, HarnessGraph graph)
    {
        ImmutableArray<bool> assumed = Assumed(bike, graph);
        return
        [
            .. bike.Lamps.Select((l, i) => (assumed[i] ? Momentary : l.Duty).DecimalFractions),
        ];
    }

    /// <summary>For each lamp whether its share is assumed.</summary>
    public static ImmutableArray<bool> Assumed(Bike bike, HarnessGraph graph)
    {
        if (bike.Lamps.All(l => l.StatedDuty is not null))
            return [.. bike.Lamps.Select(_ => false)];
        ImmutableArray<bool> momentary = new MomentaryLoads(bike, new FuseOptions()).OnlyMomentary(graph);
        return [.. bike.Lamps.Select((l, i) => l.StatedDuty is null && momentary[i])];
    }
}
