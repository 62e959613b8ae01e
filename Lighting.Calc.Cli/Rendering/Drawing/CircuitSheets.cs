namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>A circuit on as few printed sheets as leave its letters legible.</summary>
internal static class CircuitSheets
{
    // Room for marks at the edges, in steps; beyond the last a sheet would hold marks more than circuit.
    private static readonly double[] s_roomsForMarks = [0, 20, 40, 60, 80, 110, 140, 180, 240];

    /// <summary>The sheets, in reading order: one where one is legible, else those that a cut between rows and columns
    /// gives.</summary>
    /// <remarks>Where a circuit cannot be made legible so, because one column or row alone is too large, it stays on
    /// one sheet.</remarks>
    public static IReadOnlyList<CircuitDrawing> Of(CircuitGraph graph)
    {
        IReadOnlyList<CircuitLayout> layouts = CircuitLayout.All(graph);
        CircuitDrawing whole = layouts.Select(l => l.Draw()).MaxBy(d => d.Scale)!;
        if (whole.IsLegible)
            return [whole];
        Choice? best = null;
        foreach (CircuitLayout layout in layouts)
        {
            foreach (PrintedSheet sheet in new[] { PrintedSheet.OnItsSide, PrintedSheet.Upright })
            {
                if (
                    Fewest(layout, sheet, best?.Sheets.Count ?? int.MaxValue) is { } choice
                    && (best is null || choice.IsBetterThan(best))
                )
                    best = choice;
            }
        }

        return best is null ? [whole] : Evened(best);
    }

    // The least room for marks that does gives the fewest sheets.
    private static Choice? Fewest(CircuitLayout layout, PrintedSheet sheet, int most)
    {
        var tried = new HashSet<(double Height, string Cuts)>();
        foreach (double beside in s_roomsForMarks)
        {
            foreach (double below in s_roomsForMarks)
            {
                double width = sheet.Width / PrintedSheet.LeastScale - beside,
                    height = sheet.Height / PrintedSheet.LeastScale - below;
                CircuitDrawing drawing = layout.Draw(height);
                if (SheetCutter.Columns(drawing, width) is not { } cuts)
                    return null;
                if ((cuts.Count + 1) * (drawing.Bands.Count + 1) > most)
                    break;
                if (
                    tried.Add((height, string.Join(' ', cuts)))
                    && SheetCutter.Cut(drawing, cuts) is var sheets
                    && AreLegible(sheets, sheet)
                )
                    return new Choice(layout, sheet, width, height, sheets);
            }
        }

        return null;
    }

    // As many sheets, filled alike: lower bands, as long as no more of them are needed.
    private static IReadOnlyList<CircuitDrawing> Evened(Choice choice)
    {
        const double Step = 20;
        IReadOnlyList<CircuitDrawing> sheets = choice.Sheets;
        double height = choice.Height;
        while (
            height > Step
            && Cut(choice.Layout, choice.Width, height -= Step) is { } lower
            && lower.Count == sheets.Count
        )
            if (AreLegible(lower, choice.Sheet) && Evenness(lower) >= Evenness(sheets))
                sheets = lower;
        return sheets;
    }

    // Labels of the emptiest sheet over those of the fullest.
    private static double Evenness(IReadOnlyList<CircuitDrawing> sheets) =>
        sheets.Min(s => s.Labels.Count) / (double)Math.Max(1, sheets.Max(s => s.Labels.Count));

    private static bool AreLegible(IReadOnlyList<CircuitDrawing> sheets, PrintedSheet sheet) =>
        sheets.All(s => sheet.Scale(s.Width, s.Height) >= PrintedSheet.LeastScale);

    private static IReadOnlyList<CircuitDrawing>? Cut(CircuitLayout layout, double width, double height)
    {
        CircuitDrawing drawing = layout.Draw(height);
        return SheetCutter.Columns(drawing, width) is { } cuts ? SheetCutter.Cut(drawing, cuts) : null;
    }

    private sealed record Choice(
        CircuitLayout Layout,
        PrintedSheet Sheet,
        double Width,
        double Height,
        IReadOnlyList<CircuitDrawing> Sheets
    )
    {
        // A sheet that is almost empty is worse than some more conductors cut.
        private const double Alike = 0.1;

        public bool IsBetterThan(Choice other) =>
            Sheets.Count != other.Sheets.Count ? Sheets.Count < other.Sheets.Count
            : Math.Abs(Evenness(Sheets) - Evenness(other.Sheets)) > Alike ? Evenness(Sheets) > Evenness(other.Sheets)
            : Marks < other.Marks;

        private int Marks => Sheets.Sum(s => s.Marks.Count);
    }
}
