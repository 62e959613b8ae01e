namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>Cuts a drawing into sheets along its bands and some of its columns, and marks where each conductor goes
/// on.</summary>
internal sealed class SheetCutter
{
    // A part of less than this share of a sheet's width counts as almost empty.
    private const double AlmostEmpty = 2.5;

    private readonly CircuitDrawing _drawing;
    private readonly double[] _across;
    private readonly double[] _down;
    private readonly ILookup<(bool IsUpright, double Cut), Crossing> _crossings;

    private SheetCutter(CircuitDrawing drawing, IReadOnlyList<double> cuts)
    {
        _drawing = drawing;
        _across = [double.NegativeInfinity, .. cuts, double.PositiveInfinity];
        _down = [double.NegativeInfinity, .. drawing.Bands, double.PositiveInfinity];
        var crossings = new List<Crossing>();
        AddCrossings(crossings, cuts, Level(drawing), l => (l.X1, l.X2), l => l.Y1, isUpright: false);
        AddCrossings(
            crossings,
            drawing.Bands,
            drawing.Lines.Where(l => l.X1 == l.X2),
            l => (l.Y1, l.Y2),
            l => l.X1,
            isUpright: true
        );
        _crossings = crossings.ToLookup(c => (c.IsUpright, c.Cut));
    }

    /// <summary>The columns at which to cut into as few parts as are narrow enough, the fewest of them almost empty,
    /// with the fewest conductors cut; null where a single column is too wide.</summary>
    public static IReadOnlyList<double>? Columns(CircuitDrawing drawing, double widest)
    {
        double[] edges = [0, .. drawing.Columns, drawing.Width];
        int[] cost = new int[edges.Length];
        foreach (IGrouping<double, DrawnLine> row in Level(drawing).GroupBy(l => l.Y1))
            foreach (int edge in row.SelectMany(l => Within(edges, l.X1, l.X2)).Distinct())
                cost[edge]++;
        (int Parts, int Thin, int Cut, int From)[] best = new (int, int, int, int)[edges.Length];
        for (int end = 1; end < edges.Length; end++)
        {
            best[end] = (int.MaxValue, 0, 0, -1);
            for (int from = 0; from < end; from++)
            {
                if (edges[end] - edges[from] > widest || best[from].Parts == int.MaxValue)
                    continue;
                double wide = edges[end] - edges[from];
                (int Parts, int Thin, int Cut) way = (
                    best[from].Parts + 1,
                    best[from].Thin + (wide < widest / AlmostEmpty ? 1 : 0),
                    best[from].Cut + cost[from]
                );
                if (way.CompareTo((best[end].Parts, best[end].Thin, best[end].Cut)) < 0)
                    best[end] = (way.Parts, way.Thin, way.Cut, from);
            }
        }

        if (best[^1].From < 0)
            return null;
        var cuts = new List<double>();
        for (int at = best[^1].From; at > 0; at = best[at].From)
            cuts.Insert(0, edges[at]);
        return cuts;
    }

    /// <summary>The sheets, row by row, all of one size; null as soon as one does not fit.</summary>
    /// <param name="drawing">The drawing, with its bands.</param>
    /// <param name="cuts">Where to cut it upright.</param>
    /// <param name="fits">Whether a sheet fits.</param>
    /// <param name="first">The column that is cut first; becomes the one that did not fit, which decides nearly every
    /// later try.</param>
    public static IReadOnlyList<CircuitDrawing>? Cut(
        CircuitDrawing drawing,
        IReadOnlyList<double> cuts,
        Predicate<CircuitDrawing> fits,
        ref int first
    )
    {
        var cutter = new SheetCutter(drawing, cuts);
        int columns = cuts.Count + 1,
            bands = drawing.Bands.Count + 1;
        var sheets = new CircuitDrawing[columns * bands];
        for (int i = 0; i < columns; i++)
        {
            int column = (first + i) % columns,
                band = 0;
            foreach (CircuitDrawing sheet in cutter.Column(column))
            {
                if (!fits(sheet))
                {
                    first = column;
                    return null;
                }

                sheets[band++ * columns + column] = sheet;
            }
        }

        double width = sheets.Max(s => s.Width),
            height = sheets.Max(s => s.Height);
        return [.. sheets.Select(s => s with { Width = width, Height = height })];
    }

    // Sheets under each other begin at the same place across. Those beside each other do not fit: each is as low as
    // what stands on it, and the marks say where its conductors go on.
    private IEnumerable<CircuitDrawing> Column(int column)
    {
        SheetPart[] parts =
        [
            .. Cells(column)
                .Select((cell, band) => new SheetPart(cell, column, band, _across, _down, _crossings)),
        ];
        double left = parts.Min(p => p.Left);
        return parts.Select(p => EmptyRows.Without(p.Draw(left)));
    }

    // What may stand on each sheet of a column, so that not every sheet looks through all of the drawing.
    private CircuitDrawing[] Cells(int column)
    {
        var lines = Lists<DrawnLine>();
        var symbols = Lists<DrawnSymbol>();
        var dots = Lists<DrawnDot>();
        var labels = Lists<DrawnLabel>();
        foreach (DrawnLine line in _drawing.Lines.Where(l => l.X1 < _across[column + 1] && l.X2 > _across[column]))
            for (int band = Band(line.Y1); band <= Band(line.Y2); band++)
                lines[band].Add(line);
        foreach (DrawnSymbol symbol in _drawing.Symbols.Where(s => IsIn(column, s.X)))
            symbols[Band(symbol.Y)].Add(symbol);
        foreach (DrawnDot dot in _drawing.Dots.Where(d => IsIn(column, d.X)))
            dots[Band(dot.Y)].Add(dot);
        foreach (DrawnLabel label in _drawing.Labels.Where(l => IsIn(column, (l.Bounds.Left + l.Bounds.Right) / 2)))
            labels[Band((label.Bounds.Top + label.Bounds.Bottom) / 2)].Add(label);
        return
        [
            .. lines.Select(
                (l, band) =>
                    _drawing with
                    {
                        Lines = l,
                        Symbols = symbols[band],
                        Dots = dots[band],
                        Labels = labels[band],
                    }
            ),
        ];

        List<T>[] Lists<T>() => [.. Enumerable.Range(0, _down.Length - 1).Select(_ => new List<T>())];
    }

    private bool IsIn(int column, double x) => x > _across[column] && x < _across[column + 1];

    private int Band(double y)
    {
        int found = Array.BinarySearch(_down, y);
        return found >= 0 ? found : ~found - 1;
    }

    private static void AddCrossings(
        List<Crossing> crossings,
        IReadOnlyList<double> cuts,
        IEnumerable<DrawnLine> lines,
        Func<DrawnLine, (double From, double To)> ends,
        Func<DrawnLine, double> place,
        bool isUpright
    )
    {
        double[] at = [.. cuts];
        List<DrawnLine>[] crossing = [.. cuts.Select(_ => new List<DrawnLine>())];
        foreach (DrawnLine line in lines)
        {
            (double from, double to) = ends(line);
            foreach (int cut in Within(at, from, to))
                crossing[cut].Add(line);
        }

        foreach ((int cut, List<DrawnLine> here) in crossing.Index())
            foreach (IGrouping<double, DrawnLine> line in here.GroupBy(place).OrderBy(g => g.Key))
                crossings.Add(
                    new Crossing(Letters(crossings.Count), at[cut], line.Key, isUpright, line.Any(l => l.IsLive))
                );
    }

    private static IEnumerable<DrawnLine> Level(CircuitDrawing drawing) => drawing.Lines.Where(l => l.Y1 == l.Y2);

    // Which of ascending places lie between two others.
    private static IEnumerable<int> Within(double[] places, double from, double to)
    {
        int first = Array.BinarySearch(places, from);
        for (int i = first < 0 ? ~first : first; i < places.Length && places[i] < to; i++)
            if (places[i] > from)
                yield return i;
    }

    // A to Z, then AA, AB and so on.
    private static string Letters(int number) =>
        (number < 26 ? "" : Letters(number / 26 - 1)) + (char)('A' + number % 26);
}

/// <summary>A conductor that a cut parts.</summary>
/// <param name="Letter">What it is called on both sheets.</param>
/// <param name="Cut">Where the cut is.</param>
/// <param name="Place">Where along the cut the conductor crosses it.</param>
/// <param name="IsUpright">Whether the conductor is upright, the cut level.</param>
/// <param name="IsLive">Whether current flows there.</param>
internal sealed record Crossing(string Letter, double Cut, double Place, bool IsUpright, bool IsLive);
