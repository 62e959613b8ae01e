using System.Globalization;

namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>The hatchings laid over colours: plain, strokes one way, the other, crossed, upright, level,
/// dots.</summary>
internal static class Hatching
{
    private static readonly string[] s_strokes =
    [
        "",
        "M-2,10 L10,-2 M6,10 L10,6",
        "M-2,-2 L10,10 M-2,6 L2,10",
        "M0,0 L8,8 M8,0 L0,8",
        "M4,0 V8",
        "M0,4 H8",
        "M3,4 h2",
    ];

    public static void Define(Markup page, int kind)
    {
        page.Open(
            "pattern",
            ("id", "h" + kind.ToString(CultureInfo.InvariantCulture)),
            ("width", "8"),
            ("height", "8"),
            ("patternUnits", "userSpaceOnUse")
        );
        if (s_strokes[kind % s_strokes.Length] is { Length: > 0 } strokes)
            page.Void("path", ("class", "hatching"), ("d", strokes));
        page.Close();
    }
}
