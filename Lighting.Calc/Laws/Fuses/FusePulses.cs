using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>How often a fuse withstands an inrush, by the share of its melting energy that each brings.</summary>
/// <remarks>Data: tables/fuse-pulses.csv (pulses 10 s apart, so that the element cools). Between the printed numbers of
/// pulses the lower one is taken.</remarks>
internal static class FusePulses
{
    private static readonly ImmutableArray<(int Pulses, double Share)> s_rows =
    [
        .. PublishedTable
            .Load("fuse-pulses")
            .Read()
            .Select(r => ((int)r.Number("pulses"), r.Number("percent") / 100))
            .OrderByDescending(r => r.Item1),
    ];

    /// <summary>Largest share that is withstood as often as anything is printed for.</summary>
    public static (int Pulses, Ratio Share) Longest => (s_rows[0].Pulses, Ratio.FromDecimalFractions(s_rows[0].Share));

    /// <summary>How many pulses of a share are printed to be withstood; null where fewer than any.</summary>
    public static int? Withstood(double share)
    {
        foreach ((int pulses, double most) in s_rows)
            if (share <= most)
                return pulses;
        return null;
    }
}
