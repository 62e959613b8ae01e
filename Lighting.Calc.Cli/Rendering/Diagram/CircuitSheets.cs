namespace Lighting.Calc.Cli.Rendering.Diagram;

/// <summary>A circuit on as few printed sheets as leave its letters legible.</summary>
internal static class CircuitSheets
{
    // Room for marks at the edges, in steps; beyond the last a sheet would hold marks more than circuit.
    private static readonly double[] RoomsForMarks = [0, 20, 40, 60, 80, 110, 140, 180, 240];

    /// <summary>The sheets, in reading order: one where one is legible, else those that a cut between rows and columns gives.</summary>
    /// <remarks>Where a circuit cannot be made legible so, because one column or row alone is too large, it stays on one sheet.</remarks>
    public static IReadOnlyList<CircuitDrawing> Of(CircuitGraph graph)
    {
        IReadOnlyList<CircuitLayout> layouts = CircuitLayout.All(graph);
        CircuitDrawing whole = layouts.Select(l => l.Draw()).MaxBy(d => d.Scale)!;
        if (whole.IsLegible)
            return [whole];
        IReadOnlyList<CircuitDrawing>? best = null;
        foreach (CircuitLayout layout in layouts)
        {
            foreach (PrintedSheet sheet in new[] { PrintedSheet.OnItsSide, PrintedSheet.Upright })
            {
                if (Fewest(layout, sheet, best?.Count ?? int.MaxValue) is { } sheets && IsBetter(sheets, best))
                    best = sheets;
            }
        }

        return best ?? [whole];
    }

    private static bool IsBetter(IReadOnlyList<CircuitDrawing> sheets, IReadOnlyList<CircuitDrawing>? best) =>
        best is null || sheets.Count < best.Count || sheets.Count == best.Count && sheets.Sum(s => s.Marks.Count) < best.Sum(s => s.Marks.Count);

    // The least room for marks that does gives the fewest sheets.
    private static IReadOnlyList<CircuitDrawing>? Fewest(CircuitLayout layout, PrintedSheet sheet, int most)
    {
        double width = sheet.Width / PrintedSheet.LeastScale, height = sheet.Height / PrintedSheet.LeastScale;
        foreach (double beside in RoomsForMarks)
        {
            foreach (double below in RoomsForMarks)
            {
                CircuitDrawing drawing = layout.Draw(height - below);
                if (SheetCutter.Columns(drawing, width - beside) is not { } cuts)
                    return null;
                if ((cuts.Count + 1) * (drawing.Bands.Count + 1) > most)
                    break;
                IReadOnlyList<CircuitDrawing> sheets = SheetCutter.Cut(drawing, cuts);
                if (sheets.All(s => sheet.Scale(s.Width, s.Height) >= PrintedSheet.LeastScale))
                    return sheets;
            }
        }

        return null;
    }
}
