using System.Globalization;
using Lighting.Calc.Cli.Rendering.Drawing;

namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>A circuit as a picture: in a page, or alone as a file that brings its own style.</summary>
internal static class SvgCircuit
{
    private const double Margin = 10;
    private const double LeastCautionWidth = 480;

    // What is wider scrolls on every screen and is a tab stop.
    private const double WidestPage = 1200;

    // Letters need not be larger than this in print, in millimetres for a unit.
    private const double LowDrawing = 70;
    private const double LargestPrint = 1.6 * PrintedSheet.LeastScale;

    public static void Render(Markup page, CircuitBlock block, string id)
    {
        page.Open("section", ("class", Upright(IsLow(block) ? "circuit low" : "circuit", block.Sheets[0])))
            .Element("h2", block.Title, ("id", id));
        Listed(page, block);
        bool isOne = block.Sheets.Count == 1;
        page.Open("div", ("class", isOne ? "whole" : "whole screen"));
        Scrolled(page, block.Drawing, block.Title, block.Description);
        page.Close();
        for (int i = 0; i < block.Sheets.Count && !isOne; i++)
            Sheet(page, block, i);
        page.Element("p", block.Caption, ("class", "axis")).Close();
    }

    // A low drawing leaves room for the list on its printed sheet, the first where there are several.
    private static bool IsLow(CircuitBlock block)
    {
        CircuitDrawing first = block.Sheets.Count == 1 ? block.Drawing : block.Sheets[0];
        return first.DrawnHeight * Math.Min(first.Scale, LargestPrint) < LowDrawing;
    }

    // For a screen too narrow for a drawing.
    private static void Listed(Markup page, CircuitBlock block)
    {
        page.Open("ol", ("class", "by-point"));
        foreach (ListedPoint point in block.Points)
        {
            page.Open("li").Element("strong", point.Point).Text(" " + UnitText.Bound(point.Figures));
            if (point.Parts.Count > 0)
            {
                page.Open("ul");
                foreach (string part in point.Parts)
                    page.Element("li", UnitText.Bound(part));
                page.Close();
            }

            page.Close();
        }

        page.Close();
    }

    /// <summary>The drawing alone.</summary>
    public static string Alone(CircuitBlock block, CautionList? cautions)
    {
        var page = new Markup();
        double width = Math.Max(block.Drawing.Width, LeastCautionWidth);
        string[] lines = [.. (cautions?.Texts ?? []).SelectMany(c => LabelText.Wrap("! " + c, width - 2 * Margin))];
        Draw(page, block.Drawing, block.Title, block.Description, StyleSheet.OfDrawings, lines);
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + page + "\n";
    }

    private static void Sheet(Markup page, CircuitBlock block, int index)
    {
        CircuitDrawing sheet = block.Sheets[index];
        if (index == 0 && IsLow(block))
            sheet = sheet with { Height = sheet.DrawnHeight };
        string number = string.Create(CultureInfo.InvariantCulture, $"Sheet {index + 1} of {block.Sheets.Count}");
        string[] names =
        [
            .. sheet.Labels.Where(l => l is { IsLive: true, HasFigures: false }).Select(l => string.Join(' ', l.Lines)),
        ];
        page.Open("figure", ("class", "sheet-of-many")).Element("figcaption", number);
        Scrolled(
            page,
            sheet,
            $"{block.Title}: {number.ToLowerInvariant()}",
            (index == 0 ? block.Description + " " : "")
                + (
                    names.Length == 0
                        ? "No load on this sheet draws current."
                        : $"On this sheet draw current: {string.Join(", ", names)}."
                )
        );
        page.Close();
    }

    private static void Scrolled(Markup page, CircuitDrawing drawing, string title, string description)
    {
        if (drawing.Width > WidestPage)
            page.Open("div", ("class", "scroll"), ("tabindex", "0"), ("role", "region"), ("aria-label", title));
        else
            page.Open("div", ("class", "scroll"));
        Draw(page, drawing, title, description, ownStyle: null);
        page.Close();
    }

    private static string Upright(string kind, CircuitDrawing drawing) => drawing.IsUpright ? $"{kind} upright" : kind;

    // Lines of text stand over the drawing, which begins at zero in any case.
    private static void Draw(
        Markup page,
        CircuitDrawing drawing,
        string title,
        string description,
        string? ownStyle,
        params IReadOnlyList<string> above
    )
    {
        double over = above.Count == 0 ? 0 : above.Count * LabelText.LineHeight + 2 * Margin;
        string width = Markup.Number(above.Count == 0 ? drawing.Width : Math.Max(drawing.Width, LeastCautionWidth)),
            height = Markup.Number(drawing.Height + over),
            top = Markup.Number(-over);
        page.OpenPicture(
            title,
            description,
            ("class", "drawing"),
            ("viewBox", $"0 {top} {width} {height}"),
            ("width", width),
            ("height", height),
            (
                "style",
                ownStyle is null
                    ? $"--natural: {width}px; --print: "
                        + $"{Markup.Number(drawing.Width * Math.Min(drawing.Scale, LargestPrint))}mm"
                    : null
            )
        );
        if (ownStyle is not null)
        {
            page.Open("style").Own(ownStyle).Close();
            page.Void(
                "rect",
                ("class", "sheet"),
                ("y", above.Count == 0 ? null : top),
                ("width", "100%"),
                ("height", "100%")
            );
        }

        if (above.Count > 0)
        {
            page.Open("text", ("class", "label live"));
            foreach ((int index, string line) in above.Index())
                page.Element(
                    "tspan",
                    line,
                    ("x", Markup.Number(Margin)),
                    ("y", Markup.Number(Margin - over + (index + 0.8) * LabelText.LineHeight)),
                    ("textLength", Markup.Number(LabelText.Width(line, isBold: false))),
                    ("lengthAdjust", "spacingAndGlyphs")
                );
            page.Close();
        }

        foreach (DrawnLine line in drawing.Lines)
            page.Void(
                "line",
                ("class", Class("wire", line.IsLive)),
                ("x1", Markup.Number(line.X1)),
                ("y1", Markup.Number(line.Y1)),
                ("x2", Markup.Number(line.X2)),
                ("y2", Markup.Number(line.Y2))
            );
        foreach (DrawnSymbol symbol in drawing.Symbols)
            SvgSymbols.Draw(page, symbol, Class("symbol", symbol.IsLive));
        foreach (DrawnDot dot in drawing.Dots)
            page.Void(
                "circle",
                ("class", Class(dot.IsJunction ? "junction" : "point", dot.IsLive)),
                ("cx", Markup.Number(dot.X)),
                ("cy", Markup.Number(dot.Y)),
                ("r", dot.IsJunction ? "3.4" : "2.6")
            );
        foreach (DrawnLabel label in drawing.Labels)
            Label(page, label);
        foreach (DrawnMark mark in drawing.Marks)
            Mark(page, mark);
        page.Close();
    }

    private static void Mark(Markup page, DrawnMark mark)
    {
        Box box = mark.Bounds;
        page.Void(
            "rect",
            ("class", Class("mark-box", mark.IsLive)),
            ("x", Markup.Number(box.Left)),
            ("y", Markup.Number(box.Top)),
            ("width", Markup.Number(box.Right - box.Left)),
            ("height", Markup.Number(box.Bottom - box.Top))
        );
        page.Open(
                "text",
                ("class", Class("figures", mark.IsLive)),
                ("text-anchor", "middle"),
                ("x", Markup.Number((box.Left + box.Right) / 2)),
                ("y", Markup.Number(box.Bottom - 4.2)),
                ("textLength", Markup.Number(LabelText.Width(mark.Text, isBold: true))),
                ("lengthAdjust", "spacingAndGlyphs")
            )
            .Text(mark.Text)
            .Close();
    }

    private static void Label(Markup page, DrawnLabel label)
    {
        string anchor = label.Anchor switch
        {
            LabelAnchor.Start => "start",
            LabelAnchor.Middle => "middle",
            _ => "end",
        };
        bool isBad = label.Lines[0].StartsWith(CircuitPart.Sign, StringComparison.Ordinal);
        page.Open(
            "text",
            ("class", Class(isBad ? "label bad" : "label", label.IsLive)),
            ("text-anchor", anchor)
        );
        for (int i = 0; i < label.Lines.Count; i++)
        {
            // The letters' foot stands at about four fifths of a line.
            double foot = label.Top + (i + 0.8) * LabelText.LineHeight;
            bool isFigure = label.HasFigures && i == label.Lines.Count - 1;
            page.Element(
                "tspan",
                label.Lines[i],
                ("class", isFigure ? "figures" : null),
                ("x", Markup.Number(label.X)),
                ("y", Markup.Number(foot)),
                ("textLength", Markup.Number(LabelText.Width(label.Lines[i], isFigure))),
                ("lengthAdjust", "spacingAndGlyphs")
            );
        }

        page.Close();
    }

    private static string Class(string kind, bool isLive) => isLive ? $"{kind} live" : kind;
}
