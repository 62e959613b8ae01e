using System.Globalization;
using System.Text.RegularExpressions;
using UnitsNet;
using UnitsNet.Units;

namespace Lighting.Calc;

/// <summary>The ways in which the trade writes a wire, apart from the names of the <see cref="WireTable"/>.</summary>
internal static partial class WireNotation
{
    /// <summary>The size; null if the text is none.</summary>
    public static WireSize? Read(string text)
    {
        string bare = Bare(text);
        if (Gauge().Match(bare) is { Success: true } gauge)
            return OfGauge(Whole(gauge), gauge.Groups["imperial"].Success, gauge.Groups["stranded"].Success);
        if (Section().Match(bare) is { Success: true } section)
            return WireTable
                .Of(WireConstruction.MetricCable)
                .FirstOrDefault(w => Math.Abs(w.CopperArea.SquareMillimeters - Number(section)) < 1e-9);
        return Strands().Match(bare) is { Success: true } strands ? OfStrands(strands) : null;
    }

    /// <summary>A strand diameter that may be inches or millimetres, as 7/.064; null if the text is not of that
    /// kind.</summary>
    public static string? AmbiguousDiameter(string text) =>
        Strands().Match(Bare(text)) is { Success: true } match
        && match.Groups["unit"].Length == 0
        && StrandedCable.UnitOf(Number(match)) is null
            ? match.Groups["number"].Value
            : null;

    // Without spaces and case, with one way to write square millimetres and strands.
    private static string Bare(string text) =>
        string.Concat(text.Where(c => !char.IsWhiteSpace(c)))
            .ToLowerInvariant()
            .Replace("²", "2", StringComparison.Ordinal)
            .Replace("^", "", StringComparison.Ordinal)
            .Replace('×', '/')
            .Replace("s.w.g.", "swg", StringComparison.Ordinal)
            .Replace("a.w.g.", "awg", StringComparison.Ordinal)
            .Replace("\"", "in", StringComparison.Ordinal);

    private static WireSize? OfGauge(int gauge, bool isImperial, bool isStranded) =>
        isImperial
            ? gauge is >= StandardWireGauge.Largest and <= StandardWireGauge.Smallest && !isStranded
                ? StandardWireGauge.Solid(gauge)
                : null
        : gauge is not (>= AmericanWireGauge.Largest and <= AmericanWireGauge.Smallest) ? null
        : isStranded ? AmericanWireGauge.Stranded(gauge)
        : AmericanWireGauge.Solid(gauge);

    private static WireSize? OfStrands(Match match)
    {
        double diameter = Number(match);
        LengthUnit? unit = match.Groups["unit"].Value switch
        {
            "" => StrandedCable.UnitOf(diameter),
            "mm" => LengthUnit.Millimeter,
            _ => LengthUnit.Inch,
        };
        bool counts = int.TryParse(match.Groups["count"].ValueSpan, CultureInfo.InvariantCulture, out int strands);
        if (!counts || strands is < 1 or > 1000 || unit is not { } known)
            return null;
        var length = new Length(diameter, known);
        return length.Millimeters is >= 0.05 and <= 5 ? StrandedCable.Of(strands, length) : null;
    }

    private static int Whole(Match match) => int.Parse(match.Groups["number"].ValueSpan, CultureInfo.InvariantCulture);

    private static double Number(Match match) =>
        double.Parse(match.Groups["number"].ValueSpan, CultureInfo.InvariantCulture);

    // A plain gauge is American: the smaller of the two.
    [GeneratedRegex(
        "^(?:awg(?<number>[0-9]{1,2})|(?<number>[0-9]{1,2})(?:awg|gauge|ga)"
            + "|(?<imperial>swg)(?<number>[0-9]{1,2})|(?<number>[0-9]{1,2})(?<imperial>swg))"
            + "(?:solid|(?<stranded>stranded))?$"
    )]
    private static partial Regex Gauge();

    [GeneratedRegex("^(?<number>[0-9]*\\.?[0-9]+)(?:mm2|mmsq|sqmm|sq\\.mm|qmm)$")]
    private static partial Regex Section();

    [GeneratedRegex("^(?<count>[0-9]{1,4})[/x](?<number>[0-9]*\\.?[0-9]+)(?<unit>mm|in|inch)?$")]
    private static partial Regex Strands();
}
