using System.Globalization;
using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>How figures are printed: fixed culture, a unit people know, more digits beside it for programs.</summary>
internal static class Figures
{
    /// <summary>The format of ratings, of which people know each digit.</summary>
    public const string Rated = PlainFigures.Rated;

    public static string Volts(ElectricPotential value) => PlainFigures.Volts(value);

    public static string Amperes(ElectricCurrent value) => PlainFigures.Amperes(value);

    public static string Rating(ElectricCurrent value) => PlainFigures.Rating(value);

    public static string Watts(Power value) => Number((double)value.Watts, 1) + " W";

    public static string Percent(Ratio value) => PlainFigures.Percent(value);

    public static string Ohms(ElectricResistance value) =>
        value.Ohms < 1 ? TwoFigures(value.Milliohms) + " mΩ" : TwoFigures(value.Ohms) + " Ω";

    /// <summary>A number to two significant digits, never as a power of ten.</summary>
    public static string TwoFigures(double value) =>
        value == 0 || !double.IsFinite(value)
            ? Number(value, 0)
            : Math.Clamp(1 - (int)Math.Floor(Math.Log10(Math.Abs(value))), -12, 15) switch
            {
                < 0 and var tens => Number(Math.Round(value / Math.Pow(10, -tens)) * Math.Pow(10, -tens), 0),
                var decimals => Number(value, decimals),
            };

    /// <summary>Ohms as an ohmmeter shows them, which resolves a tenth of an ohm (common practice, no
    /// source).</summary>
    public static string MeterOhms(ElectricResistance value) =>
        value.Ohms switch
        {
            >= 10 => Number(value.Ohms, 0),
            >= 1 => Number(value.Ohms, 1),
            >= 0.1 => Number(value.Ohms, 2),
            _ => "under 0.1",
        } + " Ω";

    public static string Rpm(RotationalSpeed value) => PlainFigures.Rpm(value);

    public static Cell Cell(double? value, int decimals) =>
        new(value is { } known ? Number(known, decimals) : "-", value, IsNumber: true);

    /// <summary>Words in a column of numbers.</summary>
    public static Cell Right(string text) => new(text, text, IsNumber: true);

    /// <summary>A remark of the core as a sentence: a capital first, a stop last.</summary>
    public static string Sentence(string remark) =>
        char.ToUpperInvariant(remark[0]) + remark[1..] + (remark.EndsWith('.') ? "" : ".");

    public static string Number(double value, int decimals) =>
        Number(value, "F" + decimals.ToString(CultureInfo.InvariantCulture));

    /// <summary>A number to 12 significant digits: the noise of binary sums lies behind them, that of every measurement
    /// far before.</summary>
    public static double Exact(double value) => PlainFigures.Exact(value);

    public static string Number(double value, string format) => PlainFigures.Number(value, format);
}
