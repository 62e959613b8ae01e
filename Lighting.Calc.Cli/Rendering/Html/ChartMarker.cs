namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>The markers of lines: disc, square, triangle, diamond, cross, ring.</summary>
internal static class ChartMarker
{
    private static readonly string[] s_shapes =
    [
        "M-4,0 a4,4 0 1 0 8,0 a4,4 0 1 0 -8,0 Z",
        "M-4,-4 H4 V4 H-4 Z",
        "M0,-5 L5,4 L-5,4 Z",
        "M0,-5 L5,0 L0,5 L-5,0 Z",
        "M-4,-4 L4,4 M-4,4 L4,-4",
        "M-5,0 a5,5 0 1 0 10,0 a5,5 0 1 0 -10,0 Z M-2,0 a2,2 0 1 1 4,0 a2,2 0 1 1 -4,0 Z",
    ];

    public static int Count => s_shapes.Length;

    public static void Draw(Markup page, int line, string x, string y) =>
        page.Open("svg", ("x", x), ("y", y), ("overflow", "visible"))
            .Void("path", ("class", $"marker l{line % Count}"), ("d", s_shapes[line % Count]))
            .Close();
}
