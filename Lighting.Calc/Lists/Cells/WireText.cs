using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Lighting.Calc;

/// <summary>Reader of wire sizes; it suggests the nearest size for one that does not exist.</summary>
internal static class WireText
{
    private const string NoSize = "is not a wire size";

    private static readonly string s_families = Families();

    /// <summary>Reads a wire size.</summary>
    /// <param name="text">A size as <see cref="WireTable.TryFind"/> reads it: <c>16 AWG</c>, <c>1.25 mm2</c>,
    /// <c>14/0.30</c>.</param>
    /// <param name="wire">The size; null if there is a problem.</param>
    /// <param name="problem">Why the text is not a wire size; null if it is.</param>
    /// <returns>Whether the text is a wire size.</returns>
    public static bool TryParse(
        string text,
        [NotNullWhen(true)] out WireSize? wire,
        [NotNullWhen(false)] out TextProblem? problem
    )
    {
        ArgumentNullException.ThrowIfNull(text);
        string wanted = text.Trim();
        problem = WireTable.TryFind(wanted, out wire) ? null : Explain(wanted);
        return problem is null && wire is not null;
    }

    private static TextProblem Explain(string text)
    {
        if (WireNotation.AmbiguousDiameter(text) is { } diameter)
            return new TextProblem(
                text,
                $"does not say whether its strands are {diameter} mm or {diameter} inch",
                "write the unit, such as 7/0.064 mm or 7/.064 in"
            );
        if (!StrictNumber.TrySplit(StrictNumber.WithDecimalPoint(text) ?? text, out double number, out var word))
            return new TextProblem(text, NoSize, s_families, Nearest(text));
        if (word.IsEmpty)
            return new TextProblem(
                text,
                "has no unit",
                "write a cross-section such as 0.75 mm2, a gauge such as 18 AWG or strands such as 14/0.30",
                Nearest(number)
            );
        if (word.Equals("mm", StringComparison.OrdinalIgnoreCase))
            return new TextProblem(
                text,
                "is a diameter, which does not give the size: insulation differs",
                "write the cross-section, such as 0.75 mm2, or count the strands and measure one, such as 14/0.30"
            );
        return new TextProblem(text, NoSize, s_families, Nearest(number, word.ToString()));
    }

    private static string Families()
    {
        ImmutableArray<WireSize> metric = WireTable.Of(WireConstruction.MetricCable);
        string gauges =
            $"{AmericanWireGauge.Largest} AWG to {AmericanWireGauge.Smallest} AWG, alone or followed by 'stranded'";
        return $"expected {gauges}, {StandardWireGauge.Largest} SWG to {StandardWireGauge.Smallest} SWG, strands such "
            + $"as 14/0.30 or 14/.012, or {string.Join(", ", metric.Select(w => w.Name))}";
    }

    // A misspelt name: never one with other figures.
    private static ImmutableArray<string> Nearest(string text) =>
        SpellingSuggestions.Of(text, WireTable.All.Select(w => w.Name).Where(n => Figures(n) == Figures(text)));

    // A number alone may be a cross-section or a gauge.
    private static ImmutableArray<string> Nearest(double number) =>
        number is >= AmericanWireGauge.Largest and <= AmericanWireGauge.Smallest && number == Math.Floor(number)
            ? [Gauge((int)number), .. Section(number).Where(w => w == $"{number:0} mm2")]
            : Section(number);

    private static ImmutableArray<string> Nearest(double number, string word)
    {
        bool isSection =
            word.StartsWith("mm", StringComparison.OrdinalIgnoreCase)
            || word.StartsWith("sq", StringComparison.OrdinalIgnoreCase);
        if (isSection)
            return Section(number);
        bool stranded = word.Contains("str", StringComparison.OrdinalIgnoreCase);
        string unit = word.Split(' ')[0];
        if (unit.StartsWith("swg", StringComparison.OrdinalIgnoreCase))
            return [];
        if (SpellingSuggestions.Distance(unit, "awg") > 1 && SpellingSuggestions.Distance(unit, "gauge") > 2)
            return SpellingSuggestions.Distance(unit, "mm2") <= 1 ? Section(number) : [];
        int gauge = (int)Math.Round(number);
        bool isListed = gauge is >= AmericanWireGauge.Largest and <= AmericanWireGauge.Smallest;
        // Each whole gauge is about a fifth of the section from the next.
        return !isListed ? [] : [stranded ? $"{Gauge(gauge)} stranded" : Gauge(gauge)];
    }

    private static string Gauge(int number) => AmericanWireGauge.Solid(number).Name;

    // The nearest metric size, unless it is more than a fifth off.
    private static ImmutableArray<string> Section(double squareMillimetres)
    {
        WireSize nearest = WireTable
            .Of(WireConstruction.MetricCable)
            .MinBy(w => Math.Abs(w.CopperArea.SquareMillimeters - squareMillimetres))!;
        double off = Math.Abs(nearest.CopperArea.SquareMillimeters - squareMillimetres);
        return off <= squareMillimetres / 5 ? [nearest.Name] : [];
    }

    private static string Figures(string text) => string.Concat(text.Where(c => char.IsDigit(c) || c == '.'));
}
