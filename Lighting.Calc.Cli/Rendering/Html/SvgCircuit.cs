using Lighting.Calc.Cli.Rendering.Diagram;

namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>A circuit as a picture: in a page, or alone as a file that brings its own style.</summary>
internal static class SvgCircuit
{
    public static void Render(Markup page, CircuitBlock block)
    {
        page.Open("section", ("class", block.Drawing.IsUpright ? "circuit upright" : "circuit")).Element("h2", block.Title);
        page.Open("div", ("class", "scroll"), ("tabindex", "0"), ("role", "region"), ("aria-label", block.Title));
        Draw(page, block, ownStyle: null);
        page.Close().Element("p", block.Caption, ("class", "axis")).Close();
    }

    /// <summary>The drawing alone.</summary>
    public static string Alone(CircuitBlock block)
    {
        var page = new Markup();
        Draw(page, block, StyleSheet.OfDrawings);
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + page + "\n";
    }

    private static void Draw(Markup page, CircuitBlock block, string? ownStyle)
    {
        CircuitDrawing drawing = block.Drawing;
        string width = Markup.Number(drawing.Width), height = Markup.Number(drawing.Height);
        page.OpenPicture(block.Title, block.Description, ("class", "drawing"), ("viewBox", $"0 0 {width} {height}"), ("width", width), ("height", height), ("style", ownStyle is null ? $"--natural: {width}px" : null));
        if (ownStyle is not null)
        {
            page.Open("style").Own(ownStyle).Close();
            page.Void("rect", ("class", "sheet"), ("width", "100%"), ("height", "100%"));
        }

        foreach (DrawnLine line in drawing.Lines)
            page.Void("line", ("class", Class("wire", line.IsLive)), ("x1", Markup.Number(line.X1)), ("y1", Markup.Number(line.Y1)), ("x2", Markup.Number(line.X2)), ("y2", Markup.Number(line.Y2)));
        foreach (DrawnSymbol symbol in drawing.Symbols)
            SvgSymbols.Draw(page, symbol, Class("symbol", symbol.IsLive));
        foreach (DrawnDot dot in drawing.Dots)
            page.Void("circle", ("class", Class(dot.IsJunction ? "junction" : "point", dot.IsLive)), ("cx", Markup.Number(dot.X)), ("cy", Markup.Number(dot.Y)), ("r", dot.IsJunction ? "3.4" : "2.6"));
        foreach (DrawnLabel label in drawing.Labels)
            Label(page, label);
        page.Close();
    }

    private static void Label(Markup page, DrawnLabel label)
    {
        string anchor = label.Anchor switch { LabelAnchor.Start => "start", LabelAnchor.Middle => "middle", _ => "end" };
        page.Open("text", ("class", Class("label", label.IsLive)), ("text-anchor", anchor));
        for (int i = 0; i < label.Lines.Count; i++)
        {
            // The letters' foot stands at about four fifths of a line.
            double foot = label.Top + (i + 0.8) * LabelText.LineHeight;
            page.Element("tspan", label.Lines[i], ("class", label.HasFigures && i == label.Lines.Count - 1 ? "figures" : null), ("x", Markup.Number(label.X)), ("y", Markup.Number(foot)));
        }

        page.Close();
    }

    private static string Class(string kind, bool isLive) => isLive ? $"{kind} live" : kind;
}
