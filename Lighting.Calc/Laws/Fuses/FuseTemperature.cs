using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The continuous load of a fuse in warm air, against 25 °C: f = (1 + k·(T − T0))/(1 + k·(25 − T0)), one in
/// colder air.</summary>
/// <remarks>
/// Symbols: k share lost per kelvin, T0 its reference, T ambient, °C. The steady limit of 75 % is stated at 25 °C, so
/// the factor is one there; data sheets draw no more below. It is the rerating of the load; that of the opening
/// current, about −0.1 %/K, is far smaller and used for nothing. Source: tables/fuse-temperature.csv. Valid −40 °C to
/// 125 °C, the span that data sheets draw.
/// </remarks>
internal static class FuseTemperature
{
    private static readonly ImmutableArray<TableRow> s_rows = [.. PublishedTable.Load("fuse-temperature").Read()];
    private const double StatedCelsius = 25;
    private const double LowestCelsius = -40;
    private const double HighestCelsius = 125;

    /// <summary>The factor on the load of a fuse at 25 °C, at most one.</summary>
    /// <param name="style">Style of the fuse.</param>
    /// <param name="ambient">Air round the fuse, −40 °C to 125 °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">The ambient is outside its range.</exception>
    public static Ratio Factor(FuseStyle style, Temperature ambient)
    {
        double celsius = ambient.DegreesCelsius;
        if (!(celsius >= LowestCelsius && celsius <= HighestCelsius))
            throw new ArgumentOutOfRangeException(
                nameof(ambient),
                celsius,
                FormattableString.Invariant($"The air round a fuse is {LowestCelsius} °C to {HighestCelsius} °C.")
            );
        TableRow row = s_rows.First(r => r.Text("style") == TimeCurrentLimits.NameOf(style));
        double perKelvin = row.Number("percent_per_kelvin") / 100,
            reference = row.Number("reference_celsius");
        return Ratio.FromDecimalFractions(
            Math.Min(1, (1 + perKelvin * (celsius - reference)) / (1 + perKelvin * (StatedCelsius - reference)))
        );
    }
}
