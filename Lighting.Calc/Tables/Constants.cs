using System.Collections.Frozen;

namespace Lighting.Calc;

/// <summary>The single figures of <c>tables/constants.csv</c>, read once.</summary>
internal static class Constants
{
    private static readonly FrozenDictionary<string, double> s_values = PublishedTable
        .Load("constants")
        .Read()
        .ToFrozenDictionary(r => r.Text("symbol"), r => r.Number("value"), StringComparer.Ordinal);

    /// <summary>The figure of a symbol, in the unit of its row.</summary>
    public static double Of(string symbol) => s_values[symbol];
}
