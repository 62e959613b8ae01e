using System.Collections.Immutable;
using MathNet.Numerics.Interpolation;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Bundle derating of the current rating among other loaded wires.</summary>
/// <remarks>
/// All loaded: IEC 60364-5-52 table B.52.17 to 12 wires, then the MIL-W-5088L chart at 100 % to 18. Between printed
/// counts the next larger count is taken. Partly loaded: the chart, linear between its printed loadings. Data:
/// tables/bundle-derating.csv.
/// </remarks>
internal static class BundleDerating
{
    private static readonly ImmutableArray<TableRow> s_rows = [.. PublishedTable.Load("bundle-derating").Read()];
    private static readonly ImmutableSortedDictionary<int, double> s_allLoadedByCount = ReadAllLoaded();
    private static readonly ImmutableSortedDictionary<int, ImmutableArray<TableRow>> s_chart = s_rows
        .Where(IsChart)
        .GroupBy(Count)
        .ToImmutableSortedDictionary(g => g.Key, g => g.OrderBy(r => r.Number("loading_percent")).ToImmutableArray());

    /// <summary>Maximum number of wires with a printed factor.</summary>
    public static int MostWires => s_allLoadedByCount.Keys.Max();

    /// <summary>The factor of a bundle.</summary>
    /// <param name="wires">Wires in the bundle, the one rated included; 1 or more.</param>
    /// <param name="loading">Share of the bundle's capacity in use; null where all wires are loaded. A wire alone has
    /// no bundle to share heat with.</param>
    /// <returns>The factor; null where none is printed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There are fewer than one.</exception>
    public static Ratio? Of(int wires, Ratio? loading) =>
        loading is { } part && wires > 1 ? PartlyLoaded(wires, part) : AllLoaded(wires);

    /// <summary>The factor of a bundle whose wires are all loaded.</summary>
    /// <param name="wires">Wires in the bundle, the one rated included; 1 or more.</param>
    /// <returns>The factor; null beyond <see cref="MostWires"/>, for which none is printed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There are fewer than one.</exception>
    public static Ratio? AllLoaded(int wires)
    {
        Check(wires);
        foreach ((int count, double factor) in s_allLoadedByCount)
            if (count >= wires)
                return Ratio.FromDecimalFractions(factor);
        return null;
    }

    /// <summary>The factor of a bundle of which only a part is loaded, by the MIL-W-5088L chart.</summary>
    /// <param name="wires">Wires in the bundle, 1 or more.</param>
    /// <param name="loading">Share of the bundle's capacity in use, 20 % to 100 %.</param>
    /// <returns>The factor; null beyond the chart's wires or loadings.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There are fewer than one.</exception>
    public static Ratio? PartlyLoaded(int wires, Ratio loading)
    {
        Check(wires);
        foreach ((int count, ImmutableArray<TableRow> rows) in s_chart)
        {
            if (count < wires)
                continue;
            double[] loadings = [.. rows.Select(r => r.Number("loading_percent"))];
            return loading.Percent >= loadings[0] && loading.Percent <= loadings[^1]
                ? Ratio.FromDecimalFractions(
                    LinearSpline
                        .InterpolateSorted(loadings, [.. rows.Select(r => r.Number("factor"))])
                        .Interpolate(loading.Percent)
                )
                : null;
        }

        return null;
    }

    private static ImmutableSortedDictionary<int, double> ReadAllLoaded()
    {
        var factors = s_rows.Where(r => !IsChart(r)).ToDictionary(Count, r => r.Number("factor"));
        int most = factors.Keys.Max();
        foreach (TableRow row in s_rows.Where(r => IsChart(r) && Count(r) > most && r.Number("loading_percent") >= 100))
            factors.Add(Count(row), row.Number("factor"));
        return factors.ToImmutableSortedDictionary();
    }

    private static bool IsChart(TableRow row) => row.Text("standard").StartsWith("mil", StringComparison.Ordinal);

    private static int Count(TableRow row) => (int)row.Number("wires");

    private static void Check(int wires) => ArgumentOutOfRangeException.ThrowIfLessThan(wires, 1);
}
