namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>Takes the empty rows out of a sheet: where uprights alone cross, they become shorter.</summary>
internal static class EmptyRows
{
    private const double Margin = 8;
    private const double Widest = 12;
    private const double DotRadius = 4;
    private const double HalfStroke = 2;

    /// <summary>The sheet, no emptier than <see cref="Widest"/> between one thing and the next below it.</summary>
    public static CircuitDrawing Without(CircuitDrawing sheet)
    {
        (double Top, double Bottom)[] rooms = [.. Rooms(sheet).OrderBy(r => r.Top)];
        if (rooms.Length == 0)
            return sheet;
        // What is taken out, and where below it begins.
        var cuts = new List<(double From, double By)>();
        double bottom = rooms[0].Top - Margin;
        if (bottom > 0)
            cuts.Add((0, bottom));
        bottom = rooms[0].Bottom;
        foreach ((double top, double end) in rooms)
        {
            if (top - bottom > Widest)
                cuts.Add((bottom + Widest, top - bottom - Widest));
            bottom = Math.Max(bottom, end);
        }

        return sheet with
        {
            Height = At(bottom) + Margin,
            Lines = [.. sheet.Lines.Select(l => l with { Y1 = At(l.Y1), Y2 = At(l.Y2) })],
            Symbols = [.. sheet.Symbols.Select(s => s with { Y = At(s.Y) })],
            Dots = [.. sheet.Dots.Select(d => d with { Y = At(d.Y) })],
            Labels = [.. sheet.Labels.Select(l => l with { Top = At(l.Top), Bounds = Moved(l.Bounds) })],
            Marks = [.. sheet.Marks.Select(m => m with { Bounds = Moved(m.Bounds) })],
        };

        double At(double y) => y - cuts.Sum(c => Math.Clamp(y - c.From, 0, c.By));

        Box Moved(Box box) => box with { Top = At(box.Top), Bottom = At(box.Top) + box.Bottom - box.Top };
    }

    private static IEnumerable<(double Top, double Bottom)> Rooms(CircuitDrawing sheet) =>
        [
            .. sheet.Labels.Select(l => (l.Bounds.Top, l.Bounds.Bottom)),
            .. sheet.Marks.Select(m => (m.Bounds.Top, m.Bounds.Bottom)),
            .. sheet.Symbols.Select(s =>
                (s.Y - SymbolSize.Of(s.Kind).Above, s.Y + SymbolSize.Of(s.Kind).Below)
            ),
            .. sheet.Dots.Select(d => (d.Y - DotRadius, d.Y + DotRadius)),
            .. sheet.Lines.Where(l => l.Y1 == l.Y2).Select(l => (l.Y1 - HalfStroke, l.Y1 + HalfStroke)),
        ];
}
