using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>How figures are printed in sentences: fixed culture, a unit people know.</summary>
internal static class PlainFigures
{
    /// <summary>The format of ratings, of which people know each digit.</summary>
    public const string Rated = "0.###";

    public static string Volts(ElectricPotential value) => Number(value.Volts, "F2") + " V";

    public static string Amperes(ElectricCurrent value) => Number(value.Amperes, "F2") + " A";

    public static string Rating(ElectricCurrent value) => Number(value.Amperes, Rated) + " A";

    public static string Percent(Ratio value) => Number(value.Percent, "F1") + " %";

    public static string Rpm(RotationalSpeed value) => Number(value.RevolutionsPerMinute, "F0") + " rpm";

    /// <summary>A number to 12 significant digits: the noise of binary sums lies behind them, that of every measurement
    /// far before.</summary>
    public static double Exact(double value) =>
        value == 0
            ? 0
            : double.Parse(value.ToString("G12", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    /// <summary>A number in a format; one that rounds to zero has no sign.</summary>
    public static string Number(double value, string format)
    {
        string text = value.ToString(format, CultureInfo.InvariantCulture);
        return text.StartsWith('-') && text.All(c => c is '-' or '0' or '.') ? text[1..] : text;
    }
}
