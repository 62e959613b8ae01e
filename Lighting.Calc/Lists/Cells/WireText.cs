using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Lighting.Calc;

/// <summary>Reader of wire sizes; it suggests the nearest size for one that does not exist.</summary>
public static class WireText
{
    private static readonly string s_families = Families();

    /// <summary>Reads a wire size.</summary>
    /// <param name="text">A name of the <see cref="WireTable"/>: <c>16 AWG</c>, <c>16AWG stranded</c>, <c>1.25
    /// mm2</c>.</param>
    /// <param name="wire">The size; null if there is a problem.</param>
    /// <param name="problem">Why the text is not a wire size; null if it is.</param>
    /// <returns>Whether the text is a wire size.</returns>
    /// <exception cref="ArgumentNullException">The text is null.</exception>
    public static bool TryParse(
        string text,
        [NotNullWhen(true)] out WireSize? wire,
        [NotNullWhen(false)] out TextProblem? problem
    )
    {
        ArgumentNullException.ThrowIfNull(text);
        string wanted = text.Trim();
        problem =
            WireTable.TryFind(wanted, out wire) && wire is not null
                ? null
                : new TextProblem(wanted, "is not a wire size", s_families, Nearest(wanted));
        return problem is null && wire is not null;
    }

    private static string Families()
    {
        ImmutableArray<WireSize> metric = WireTable.Of(WireConstruction.MetricCable);
        string gauges =
            $"{AmericanWireGauge.Largest} AWG to {AmericanWireGauge.Smallest} AWG, alone or followed by 'stranded'";
        return $"expected {gauges}, or {string.Join(", ", metric.Select(w => w.Name))}";
    }

    private static ImmutableArray<string> Nearest(string text)
    {
        if (text.StartsWith("AWG", StringComparison.OrdinalIgnoreCase))
            text = $"{text[3..].Trim()} AWG";
        if (!StrictNumber.TrySplit(text, out double number, out ReadOnlySpan<char> word))
            return SpellingSuggestions.Of(text, WireTable.All.Select(w => w.Name));
        if (
            word.StartsWith("mm", StringComparison.OrdinalIgnoreCase)
            || word.StartsWith("sq", StringComparison.OrdinalIgnoreCase)
        )
            return
            [
                WireTable
                    .Of(WireConstruction.MetricCable)
                    .MinBy(w => Math.Abs(w.CopperArea.SquareMillimeters - number))!
                    .Name,
            ];
        int gauge = (int)Math.Round(Math.Clamp(number, AmericanWireGauge.Largest, AmericanWireGauge.Smallest));
        bool stranded = word.Contains("str", StringComparison.OrdinalIgnoreCase);
        return [stranded ? AmericanWireGauge.Stranded(gauge).Name : AmericanWireGauge.Solid(gauge).Name];
    }
}
