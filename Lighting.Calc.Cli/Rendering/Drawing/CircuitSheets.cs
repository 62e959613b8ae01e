namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>A circuit on as few printed sheets as leave its letters legible.</summary>
internal static class CircuitSheets
{
    // Room for marks at the edges, in steps; beyond the last a sheet would hold marks more than circuit.
    private static readonly double[] s_roomsForMarks = [0, 20, 40, 60, 80, 110, 140, 180, 240];

    // Of more sheets than this not every way is tried: some fewer are not worth seconds.
    private const int Many = 60;
    private const int WaysOfMany = 6;

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
        // What promises the fewest sheets comes first, so that of the others few are cut.
        (CircuitLayout Layout, PrintedSheet Sheet)[] ways =
        [
            .. layouts.SelectMany(l => new[] { PrintedSheet.OnItsSide, PrintedSheet.Upright }.Select(s => (l, s))),
        ];
        int[] least = [.. ways.Select(w => Least(w.Layout, w.Sheet))];
        int promising = Array.IndexOf(least, least.Min());
        Choice? first = Fewest(ways[promising].Layout, ways[promising].Sheet, int.MaxValue),
            best = null;
        int most = first?.Sheets.Count ?? int.MaxValue;
        int[] tried = [.. Enumerable.Range(0, ways.Length).Where(i => least[i] <= most)];
        if (most > Many)
            tried = [.. tried.OrderBy(i => least[i]).Take(WaysOfMany)];
        foreach (int i in tried)
        {
            (CircuitLayout layout, PrintedSheet sheet) = ways[i];
            Choice? choice =
                i == promising ? first : Fewest(layout, sheet, Math.Min(most, best?.Sheets.Count ?? most));
            if (choice is not null && (best is null || choice.IsBetterThan(best)))
                best = choice;
        }

        return best is null ? [whole] : Evened(best);
    }

    // No fewer sheets than this, without room for marks: bands end where the rows of the whole may part.
    private static int Least(CircuitLayout layout, PrintedSheet sheet)
    {
        CircuitDrawing whole = layout.Draw();
        double bands = whole.Height / (sheet.Height / PrintedSheet.LeastScale + CircuitLayout.BandGap);
        return SheetCutter.Columns(whole, sheet.Width / PrintedSheet.LeastScale) is { } cuts
            ? (cuts.Count + 1) * (int)Math.Ceiling(bands)
            : int.MaxValue;
    }

    // The least room for marks that does gives the fewest sheets.
    private static Choice? Fewest(CircuitLayout layout, PrintedSheet sheet, int most)
    {
        var tried = new HashSet<(double Height, string Cuts)>();
        int hardest = 0;
        foreach (double beside in s_roomsForMarks)
        {
            double width = sheet.Width / PrintedSheet.LeastScale - beside;
            if (SheetCutter.Columns(layout.Draw(), width) is not { } cuts)
                return null;
            foreach (double below in s_roomsForMarks)
            {
                double height = sheet.Height / PrintedSheet.LeastScale - below;
                CircuitDrawing drawing = layout.Draw(height);
                if ((cuts.Count + 1) * (drawing.Bands.Count + 1) > most)
                {
                    // More room for marks means as many sheets or more.
                    if (below == 0)
                        return null;
                    break;
                }

                if (
                    tried.Add((height, string.Join(' ', cuts)))
                    && SheetCutter.Cut(drawing, cuts, sheet.IsLegible, ref hardest) is { } sheets
                )
                    return new Choice(layout, sheet, cuts, height, sheets);
            }
        }

        return null;
    }

    // As many sheets, filled alike: lower bands, as long as no more of them are needed.
    private static IReadOnlyList<CircuitDrawing> Evened(Choice choice)
    {
        const double Step = 20;
        int hardest = 0;
        IReadOnlyList<CircuitDrawing> sheets = choice.Sheets;
        for (double height = choice.Height - Step; height > 0; height -= Step)
        {
            CircuitDrawing drawing = choice.Layout.Draw(height);
            if ((choice.Cuts.Count + 1) * (drawing.Bands.Count + 1) != sheets.Count)
                break;
            if (
                SheetCutter.Cut(drawing, choice.Cuts, choice.Sheet.IsLegible, ref hardest) is { } lower
                && Evenness(lower) >= Evenness(sheets)
            )
                sheets = lower;
        }

        return sheets;
    }

    // Labels of the emptiest sheet over those of the fullest.
    private static double Evenness(IReadOnlyList<CircuitDrawing> sheets) =>
        sheets.Min(s => s.Labels.Count) / (double)Math.Max(1, sheets.Max(s => s.Labels.Count));

    private sealed record Choice(
        CircuitLayout Layout,
        PrintedSheet Sheet,
        IReadOnlyList<double> Cuts,
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
