namespace Lighting.Calc.Cli.Rendering;

/// <summary>About how much of a printed sheet blocks take, in millimetres: enough to leave no sheet almost empty before
/// a drawing that begins a new one.</summary>
internal static class PrintedHeight
{
    /// <summary>What Letter, the lower of the two papers, leaves between its margins.</summary>
    public const double Sheet = 253;

    // Title, verdict, figures, lines to write on and cautions.
    private const double Head = 102;
    private const double HeadingHeight = 9;
    private const double LineHeight = 3.9;
    private const double TableRow = 4.2;
    private const double BarHeight = 4.6;
    private const double PlotHeight = 60;

    // Below a long list of work the plot is lower, as the style sheet says.
    private const int LongWork = 4;
    private const double LowPlotHeight = 51;

    // Letters on a line across the sheet, and in the columns of a piece of work.
    private const double Across = 112;
    private const double Narrow = 31;
    private const double Wide = 41;

    /// <summary>The first sheet with its head.</summary>
    public static double OfFirst(IEnumerable<Block> blocks) => Head + Of(blocks);

    public static double Of(IEnumerable<Block> blocks)
    {
        Block[] all = [.. blocks];
        bool isLong = all.OfType<WorkList>().Any(w => w.Items.Count >= LongWork);
        return all.Sum(b => isLong && b is LineChart ? LowPlotHeight : Of(b));
    }

    private static double Of(Block block) =>
        block switch
        {
            SpreadsheetOnly or PageOnly or ScreenOnly => 0,
            Heading => HeadingHeight,
            Paragraph paragraph => 1.5 + LineHeight * Lines(paragraph.Text, Across),
            PrintOnly print => Of(print.Blocks),
            WorkList work => work.Items.Take(work.PrintedItems).Sum(i =>
                1.5
                + LineHeight
                    * (
                        1
                        + Math.Max(
                            Lines($"Needed: {i.Needed}", Wide),
                            Math.Max(Lines($"Now: {i.Now}", Narrow), Lines($"Why: {i.Why}", Narrow))
                        )
                    )
            ),
            Table table => TableRow * (1 + table.Rows.Count),
            BarChart bars => 10 + BarHeight * bars.Bars.Count,
            OpeningLines lines => LineHeight * lines.Lines.Sum(l => Lines(l.Line, Across / 2)) / 2,
            LineChart => PlotHeight,
            _ => 0,
        };

    private static double Lines(string text, double letters) =>
        text.Split('\n').Sum(l => Math.Max(1, Math.Ceiling(l.Length / letters)));
}
