using Lighting.Calc.Cli.Rendering.Drawing;

namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>The symbols of IEC 60617 as strokes, each about the middle of a level conductor that it covers.</summary>
internal static class SvgSymbols
{
    public static void Draw(Markup page, DrawnSymbol symbol, string style)
    {
        page.Open(
            "g",
            ("class", style),
            ("transform", $"translate({Markup.Number(symbol.X)},{Markup.Number(symbol.Y)})")
        );
        switch (symbol.Kind)
        {
            case SymbolKind.Wire:
                break;
            case SymbolKind.Fuse:
                Shape(page, "M-12,-4.5 H12 V4.5 H-12 Z");
                Stroke(page, "M-12,0 H12");
                break;
            case SymbolKind.Resistor:
                Shape(page, "M-12,-4.5 H12 V4.5 H-12 Z");
                break;
            case SymbolKind.ClosedContact:
                Gap(page, 9);
                Stroke(page, "M-9,0 L9,0");
                Terminals(page);
                break;
            case SymbolKind.OpenContact:
                Gap(page, 9);
                Stroke(page, "M-9,0 L7,-9");
                Terminals(page);
                break;
            case SymbolKind.Lamp:
                Shape(page, Circle(7.5));
                Stroke(page, "M-5.3,-5.3 L5.3,5.3 M-5.3,5.3 L5.3,-5.3");
                break;
            case SymbolKind.Led:
                Diode(page, 0);
                break;
            case SymbolKind.LedWithResistor:
                Shape(page, "M-21,-4 H-3 V4 H-21 Z");
                Diode(page, 13);
                break;
            case SymbolKind.ConstantCurrent:
                Shape(page, Circle(7.5));
                Stroke(page, "M0,-7.5 V7.5");
                break;
            case SymbolKind.Battery:
                Cells(page, "M8,-9 V9 M-3,-9 V9", "M3,-4.5 V4.5 M-8,-4.5 V4.5");
                break;
            case SymbolKind.BatteryReversed:
                Cells(page, "M-8,-9 V9 M3,-9 V9", "M-3,-4.5 V4.5 M8,-4.5 V4.5");
                break;
            case SymbolKind.Coil:
                Shape(page, Circle(9.5));
                Stroke(page, "M-6,0 C-4,-7 -2,-7 0,0 S4,7 6,0");
                break;
            case SymbolKind.Earth:
                Stroke(page, "M0,-9 V9 M4,-6 V6 M8,-3 V3");
                break;
            case SymbolKind.EarthLeft:
                Stroke(page, "M0,-9 V9 M-4,-6 V6 M-8,-3 V3");
                break;
            default:
                throw new InvalidOperationException($"No strokes for {symbol.Kind}.");
        }

        page.Close();
    }

    private static void Diode(Markup page, double x)
    {
        string at = Markup.Number(x);
        page.Open("g", ("transform", $"translate({at},0)"));
        Shape(page, "M-6,-5.5 L6,0 L-6,5.5 Z");
        Stroke(page, "M6,-5.5 V5.5 M-1,-7 L3,-12 M0.2,-11.2 L3,-12 L3,-9.2 M4,-7 L8,-12 M5.2,-11.2 L8,-12 L8,-9.2");
        page.Close();
    }

    private static void Cells(Markup page, string positive, string negative)
    {
        Gap(page, 8);
        Stroke(page, "M-3,0 h6");
        Stroke(page, positive);
        page.Void("path", ("class", "thick"), ("d", negative));
    }

    private static void Terminals(Markup page)
    {
        Shape(page, "M-11,0 a2,2 0 1 0 4,0 a2,2 0 1 0 -4,0 Z");
        Shape(page, "M7,0 a2,2 0 1 0 4,0 a2,2 0 1 0 -4,0 Z");
    }

    private static string Circle(double radius)
    {
        string r = Markup.Number(radius),
            d = Markup.Number(2 * radius);
        return $"M-{r},0 a{r},{r} 0 1 0 {d},0 a{r},{r} 0 1 0 -{d},0 Z";
    }

    private static void Gap(Markup page, double half)
    {
        string h = Markup.Number(half);
        page.Void("path", ("class", "gap"), ("d", $"M-{h},-2 H{h} V2 H-{h} Z"));
    }

    private static void Shape(Markup page, string path) => page.Void("path", ("class", "shape"), ("d", path));

    private static void Stroke(Markup page, string path) => page.Void("path", ("class", "stroke"), ("d", path));
}
