using System.Text.RegularExpressions;

namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>Keeps a figure and its unit on one line.</summary>
internal static partial class UnitText
{
    public static string Bound(string text) => FigureAndUnit().Replace(text, "$1\u00A0$2");

    [GeneratedRegex(@"(\d) ((?:V|A|W|Ah|Ω|mΩ|%|rpm|min|h|m|mm2|AWG|°C)\b|%)")]
    private static partial Regex FigureAndUnit();
}
