using System.Text.RegularExpressions;

namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>Keeps a figure and its unit on one line.</summary>
internal static partial class UnitText
{
    public static string Bound(string text) => FigureAndUnit().Replace(text, "$1\u00A0$2");

    [GeneratedRegex(@"(\d) ((?:V|mV|A|mA|W|Ah|Ω|mΩ|kΩ|MΩ|lm|%|rpm|min|h|s|ms|m|mm2|mm²|cm³|AWG|°C)\b|%)")]
    private static partial Regex FigureAndUnit();
}
