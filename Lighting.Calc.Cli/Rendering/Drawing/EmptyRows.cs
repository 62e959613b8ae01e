namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>Takes the empty rows out of a sheet: where uprights alone cross, they become shorter.</summary>
internal static class EmptyRows
{
    private const double Widest = 12;

    /// <summary>The sheet, no emptier than <see cref="Widest"/> between one thing and the next below it.</summary>
    public static CircuitDrawing Without(CircuitDrawing sheet)
    {
        Box[] rooms = [.. Rooms(sheet).OrderBy(r => r.Top)];
        if (rooms.Length == 0)
            return sheet;
        // What is taken out, and where below it begins.
        var cuts = new List<(double From, double By)>();
        double bottom = rooms[0].Top - SheetPart.Margin;
        if (bottom > 0)
            cuts.Add((0, bottom));
        bottom = rooms[0].Bottom;
        foreach (Box room in rooms)
        {
            if (room.Top - bottom > Widest)
                cuts.Add((bottom + Widest, room.Top - bottom - Widest));
            bottom = Math.Max(bottom, room.Bottom);
        }

        return sheet with
        {
            Height = At(bottom) + SheetPart.Margin,
            Lines = [.. sheet.Lines.Select(l => l with { Y1 = At(l.Y1), Y2 = At(l.Y2) })],
            Symbols = [.. sheet.Symbols.Select(s => s with { Y = At(s.Y) })],
            Dots = [.. sheet.Dots.Select(d => d with { Y = At(d.Y) })],
            Labels = [.. sheet.Labels.Select(l => l with { Top = At(l.Top), Bounds = Moved(l.Bounds) })],
            Marks = [.. sheet.Marks.Select(m => m with { Bounds = Moved(m.Bounds) })],
        };

        double At(double y) => y - cuts.Sum(c => Math.Clamp(y - c.From, 0, c.By));

        Box Moved(Box box) => box with { Top = At(box.Top), Bottom = At(box.Top) + box.Bottom - box.Top };
    }

    private static IEnumerable<Box> Rooms(CircuitDrawing sheet) =>
        [
            .. sheet.Labels.Select(l => l.Bounds),
            .. sheet.Marks.Select(m => m.Bounds),
            .. sheet.Symbols.Select(SheetPart.Room),
            .. sheet.Dots.Select(SheetPart.Room),
            .. sheet
                .Lines.Where(l => l.Y1 == l.Y2)
                .Select(l => new Box(l.X1, l.Y1 - SheetPart.HalfStroke, l.X2, l.Y1 + SheetPart.HalfStroke)),
        ];
}
