using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The standard wire sizes: American wire gauges 4 to 30, solid and stranded, metric vehicle cable, cable by
/// its strands, and imperial gauges 0 to 40.</summary>
public static class WireTable
{
    /// <summary>Every size, largest first within each construction.</summary>
    public static ImmutableArray<WireSize> All { get; } =
    [
        .. Enumerable
            .Range(AmericanWireGauge.Largest, AmericanWireGauge.Smallest - AmericanWireGauge.Largest + 1)
            .Select(AmericanWireGauge.Solid),
        .. Enumerable
            .Range(AmericanWireGauge.Largest, AmericanWireGauge.Smallest - AmericanWireGauge.Largest + 1)
            .Select(AmericanWireGauge.Stranded),
        .. PublishedTable
            .Load("conductors-metric")
            .Read()
            .Select(Metric)
            .OrderByDescending(w => w.CopperArea.SquareMillimeters),
        .. StrandedCable
            .Listed.OrderBy(w => w.Construction)
            .ThenByDescending(w => w.CopperArea.SquareMillimeters),
        .. Enumerable
            .Range(StandardWireGauge.Largest, StandardWireGauge.Smallest - StandardWireGauge.Largest + 1)
            .Select(StandardWireGauge.Solid),
    ];

    // By its name as this table writes it, which most texts are, and without the spaces.
    private static readonly FrozenDictionary<string, WireSize> s_byName = All.SelectMany(w =>
            new[] { w.Name, Normalise(w.Name) }.Distinct().Select(n => (Name: n, Wire: w))
        )
        .ToFrozenDictionary(n => n.Name, n => n.Wire);

    private static readonly FrozenDictionary<WireConstruction, ImmutableArray<WireSize>> s_byConstruction = All.GroupBy(
            w => w.Construction
        )
        .ToFrozenDictionary(g => g.Key, g => g.OrderBy(w => w.CopperArea.SquareMillimeters).ToImmutableArray());

    /// <summary>The sizes of one construction, smallest first.</summary>
    /// <param name="construction">One of the enumeration.</param>
    /// <returns>The sizes; empty for any other value.</returns>
    public static ImmutableArray<WireSize> Of(WireConstruction construction) =>
        s_byConstruction.GetValueOrDefault(construction, []);

    /// <summary>Finds a size as the trade writes it: <c>16 AWG</c>, <c>AWG 16</c>, <c>16 gauge</c>, <c>16AWG
    /// stranded</c>, <c>1.25 mm2</c>, <c>1.0 mm^2</c>, <c>18 SWG</c>, and strands by count and diameter, listed or not:
    /// <c>14/0.30</c>, <c>14/.012</c>.</summary>
    /// <param name="text">The text.</param>
    /// <param name="wire">The size, or null if there is none of that name.</param>
    /// <returns>Whether there is such a size.</returns>
    public static bool TryFind(string text, [NotNullWhen(true)] out WireSize? wire) =>
        s_byName.TryGetValue(text, out wire)
        || s_byName.TryGetValue(Normalise(text), out wire)
        || (wire = WireNotation.Read(text)) is not null;

    private static string Normalise(string text) =>
        string.Concat(text.Where(c => !char.IsWhiteSpace(c)))
            .Replace("²", "2", StringComparison.Ordinal)
            .ToLowerInvariant();

    private static WireSize Metric(TableRow row)
    {
        double area = row.Number("area_mm2");
        return new WireSize(
            $"{area.ToString(CultureInfo.InvariantCulture)} mm2",
            WireConstruction.MetricCable,
            Area.FromSquareMillimeters(area),
            row.Number("max_ohm_per_km") / 1000
        );
    }
}
