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

    /// <summary>Opens a picture that is not shown and only defines patterns, and its <c>defs</c>.</summary>
    public static Markup OpenDefinitions(Markup page) =>
        page.Open(
                "svg",
                ("xmlns", "http://www.w3.org/2000/svg"),
                ("aria-hidden", "true"),
                ("class", "patterns"),
                ("width", "0"),
                ("height", "0")
            )
            .Open("defs");

    /// <summary>The hatching of what lies beyond a limit, for the whole page.</summary>
    public static void DefineBeyond(Markup page) =>
        OpenDefinitions(page)
            .Open("pattern", ("id", "beyond"), ("width", "5"), ("height", "5"), ("patternUnits", "userSpaceOnUse"))
            .Void("rect", ("class", "beyond-ground"), ("width", "5"), ("height", "5"))
            .Void("path", ("class", "beyond-stroke"), ("d", "M0,0 L5,5 M5,0 L0,5"))
            .Close()
            .Close()
            .Close();

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
