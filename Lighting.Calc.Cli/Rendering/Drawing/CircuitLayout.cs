namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>Lays a circuit out: source on the left, earth on the right, loads in one column between, every conductor
/// level or upright.</summary>
/// <remarks>
/// Points stand in columns by their distance from source or earth. A slot before each column holds the symbols and
/// labels of the parts that lead there, a channel behind it holds uprights alone: so no upright runs through a
/// label. No two conductors share a row, and rows stand as far apart as what is written on them needs.
/// </remarks>
internal sealed class CircuitLayout
{
    private const double Margin = 5;
    private const double SlotPadding = 6;
    private const double RowGap = 5;
    /// <summary>What is left free between two bands.</summary>
    public const double BandGap = 10;

    private const double SourceRoom = 76;
    private const double EarthRoom = 34;
    private const double BesideGap = 4;
    private const double LoadLine = 110;

    // Where names may be broken: narrow columns make a drawing tall, wide ones make it broad.
    private static readonly double[] s_longestLines = [50, 56, 66, 74, 84, 96, 120];

    private readonly CircuitGraph _graph;
    private readonly double _longestLine;
    private readonly bool _labelsBesideLoads;
    private readonly CircuitSides _sides;
    private readonly CircuitRows _rows;
    private readonly Dictionary<int, SideBus> _feedBuses;
    private readonly Dictionary<int, SideBus> _returnBuses;
    private readonly SideColumns _feedColumns;
    private readonly SideColumns _returnColumns;
    private readonly double _loadSlot;
    private readonly double _middle;
    private readonly double _width;
    private readonly HashSet<int> _live;
    private readonly List<LevelItem> _items = [];
    private Box[][] _rooms = [];
    private readonly Dictionary<double, CircuitDrawing> _drawn = [];

    private CircuitLayout(
        CircuitGraph graph,
        CircuitSides sides,
        CircuitRows rows,
        double longestLine,
        bool labelsBesideLoads
    )
    {
        _graph = graph;
        _longestLine = longestLine;
        _labelsBesideLoads = labelsBesideLoads;
        _sides = sides;
        _rows = rows;
        _live = [.. graph.Parts.Where(p => p.IsLive).SelectMany(p => new[] { p.From, p.To })];
        _feedBuses = SideBus.Of(_sides.Feed, _sides.Between, p => p.Near, _rows);
        _returnBuses = SideBus.Of(_sides.Return, _sides.Between, p => p.Far, _rows);
        _feedColumns = new SideColumns(Slots(_sides.Feed, SourceWidth()), Tracks(_sides.Feed, _feedBuses), 1);
        _returnColumns = new SideColumns(Slots(_sides.Return, EarthRoom), Tracks(_sides.Return, _returnBuses), -1);
        _loadSlot = _sides.Between.Select(BetweenWidth).DefaultIfEmpty().Max() + SlotPadding;
        _width = 2 * Margin + _feedColumns.Width + _loadSlot + _returnColumns.Width;
        _feedColumns.Place(Margin);
        _returnColumns.Place(_width - Margin);
        _middle = Margin + _feedColumns.Width + _loadSlot / 2;
    }

    /// <summary>Lays a circuit out, of several widths of column and places of labels those that stand largest on a
    /// printed sheet.</summary>
    public static CircuitDrawing Of(CircuitGraph graph) => All(graph).Select(l => l.Draw()).MaxBy(d => d.Scale)!;

    /// <summary>A circuit's layouts in several widths of column and places of labels.</summary>
    public static IReadOnlyList<CircuitLayout> All(CircuitGraph graph)
    {
        var sides = CircuitSides.Of(graph);
        var rows = CircuitRows.Of(sides);
        return
        [
            .. s_longestLines.SelectMany(longest =>
                new[] { false, true }.Select(beside => new CircuitLayout(graph, sides, rows, longest, beside))
            ),
        ];
    }

    /// <summary>Draws it.</summary>
    /// <param name="bandHeight">The height after which rows begin a new band, to be cut off.</param>
    public CircuitDrawing Draw(double bandHeight = double.PositiveInfinity) =>
        _drawn.TryGetValue(bandHeight, out CircuitDrawing? known)
            ? known
            : _drawn[bandHeight] = DrawInBands(bandHeight);

    private CircuitDrawing DrawInBands(double bandHeight)
    {
        if (_items.Count == 0)
            PlaceItems();
        var bands = new List<double>();
        double[] heights = RowHeights(bandHeight, bands);
        var lines = new List<DrawnLine>();
        var dots = new List<DrawnDot>();
        foreach (LevelItem item in _items.Where(i => Math.Abs(i.Right - i.Left) > 0.01))
            lines.Add(
                new DrawnLine(item.Left, heights[item.Row], item.Right, heights[item.Row], item.IsLive, item.Part)
            );
        DrawBuses(_feedBuses.Values, lines, dots, heights);
        DrawBuses(_returnBuses.Values, lines, dots, heights);
        foreach (int point in Enumerable.Range(0, _graph.Points.Count))
            dots.Add(new DrawnDot(PointX(point), heights[_rows.Of(point)], false, IsLive(point)));
        return new CircuitDrawing(
            _width,
            _rooms.Index().Max(r => heights[r.Index] + r.Item.Max(b => b.Bottom)) + Margin,
            [.. lines.OrderBy(l => l.IsLive)],
            [
                .. _items
                    .Where(i => i.Symbol is not null)
                    .Select(i => new DrawnSymbol(i.Symbol!.Value, i.SymbolX, heights[i.Row], i.IsLive)),
            ],
            [.. dots],
            [.. _items.SelectMany(i => i.Labels(heights[i.Row]))]
        )
        {
            Columns =
            [
                .. _feedColumns.Edges.Skip(1),
                _middle - _loadSlot / 2,
                _middle + _loadSlot / 2,
                .. _returnColumns.Edges.Skip(1).Reverse(),
            ],
            Bands = bands,
        };
    }

    // Bands move rows apart; what stands on each stays.
    private void PlaceItems()
    {
        PlaceSource();
        PlaceEarth();
        PlaceSide(_sides.Feed, _feedColumns, _feedBuses, LabelAnchor.End);
        PlaceSide(_sides.Return, _returnColumns, _returnBuses, LabelAnchor.Start);
        foreach (SidePart part in _sides.Between)
            PlaceBetween(part);
        ILookup<int, Box> onRow = _items
            .SelectMany(i => i.Rooms().Select(r => (i.Row, Room: r)))
            .ToLookup(r => r.Row, r => r.Room);
        _rooms = [.. Enumerable.Range(0, _rows.Count).Select(row => onRow[row].ToArray())];
    }

    private void PlaceBetween(SidePart part)
    {
        LevelItem item = new LevelItem(
            _rows.Of(part),
            BusX(part.Near),
            BusX(part.Far),
            part.Part.IsLive,
            part.Part.Number
        ).With(part.Part.Symbol, _middle);
        double beside = SymbolSize.Of(part.Part.Symbol).HalfWidth + BesideGap;
        Place(
            _labelsBesideLoads
                ? item.OnLine(_middle - beside, LabelAnchor.End, Name(part.Part), hasFigures: false)
                    .OnLine(_middle + beside, LabelAnchor.Start, [part.Part.Figures], hasFigures: true)
                : item.Above(_middle, LabelAnchor.Middle, Name(part.Part), hasFigures: false)
                    .Below(_middle, LabelAnchor.Middle, [part.Part.Figures])
        );
    }

    private void PlaceSource()
    {
        double end = _feedColumns.PointX(0),
            symbol = end - SourceWidth() / 2;
        bool isLive = IsLive(_graph.Source);
        int row = _rows.Of(_graph.Source);
        Place(
            new LevelItem(row, symbol - SourceRoom / 2 + 6, end, isLive)
                .With(_graph.SourceSymbol, symbol)
                .Above(symbol, LabelAnchor.Middle, [_graph.SourceName, _graph.SourceFigures], hasFigures: true)
        );
        Place(
            new LevelItem(row, symbol - SourceRoom / 2 + 6, symbol - SourceRoom / 2 + 6, isLive).With(
                SymbolKind.EarthLeft,
                symbol - SourceRoom / 2 + 6
            )
        );
    }

    private void PlaceEarth()
    {
        double at = _returnColumns.PointX(0);
        Place(new LevelItem(_rows.Of(_graph.Earth), at, at + 14, IsLive(_graph.Earth)).With(SymbolKind.Earth, at + 14));
    }

    private void PlaceSide(CircuitSide side, SideColumns columns, Dictionary<int, SideBus> buses, LabelAnchor anchor)
    {
        int away = anchor == LabelAnchor.End ? -1 : 1;
        foreach (int point in side.Points)
        {
            double x = columns.PointX(side.Layer[point]);
            int row = _rows.Of(point);
            if (side.Hung.TryGetValue(point, out SidePart? part))
                Place(OnSide(part, row, x, side, columns).Below(x + 3 * away, anchor, PointLines(point)));
            else
                Place(
                    new LevelItem(row, x, x, IsLive(point))
                        .Raised(point == _graph.Source || point == _graph.Earth ? 10 : 3)
                        .Below(x + 3 * away, anchor, PointLines(point))
                );
            if (buses[point].IsUpright)
                Place(new LevelItem(row, x, BusX(point), buses[point].Taps.Any(t => t.IsLive)));
        }

        foreach (SidePart loop in side.Loops)
            Place(OnSide(loop, _rows.Of(loop), BusX(loop.Far), side, columns));
    }

    private LevelItem OnSide(SidePart part, int row, double end, CircuitSide side, SideColumns columns)
    {
        double middle = columns.SlotMiddle(side.Layer[part.Far]);
        return new LevelItem(row, BusX(part.Near), end, part.Part.IsLive, part.Part.Number)
            .With(part.Part.Symbol, middle)
            .Above(middle, LabelAnchor.Middle, [.. Name(part.Part), part.Part.Figures]);
    }

    private void Place(LevelItem item) => _items.Add(item);

    private static void DrawBuses(
        IEnumerable<SideBus> buses,
        List<DrawnLine> lines,
        List<DrawnDot> dots,
        double[] heights,
        Func<SideBus, double> x
    )
    {
        foreach (SideBus bus in buses.Where(b => b.IsUpright))
        {
            double at = x(bus);
            lines.Add(new DrawnLine(at, heights[bus.Top], at, heights[bus.Bottom], false));
            int[] live = [.. bus.Taps.Where(t => t.IsLive).Select(t => t.Row).Append(bus.Row)];
            if (live.Min() < live.Max())
                lines.Add(new DrawnLine(at, heights[live.Min()], at, heights[live.Max()], true));
            foreach (int row in bus.Taps.Select(t => t.Row).Append(bus.Row).Distinct())
            {
                int ways =
                    (row > bus.Top ? 1 : 0)
                    + (row < bus.Bottom ? 1 : 0)
                    + (row == bus.Row ? 1 : 0)
                    + (bus.Taps.Any(t => t.Row == row) ? 1 : 0);
                if (ways > 2)
                    dots.Add(
                        new DrawnDot(at, heights[row], true, row >= live.Min() && row <= live.Max() && live.Length > 1)
                    );
            }
        }
    }

    private void DrawBuses(IEnumerable<SideBus> buses, List<DrawnLine> lines, List<DrawnDot> dots, double[] heights) =>
        DrawBuses(buses, lines, dots, heights, b => BusX(b.Point));

    // Rows stand as near as what is on them lets them; a band holds no more than its height, and nothing of it reaches
    // into the next.
    private double[] RowHeights(double bandHeight, List<double> bands)
    {
        double[] heights = new double[_rows.Count];
        double highest = _rooms.Min(r => r.Min(b => b.Top));
        var rooms = new List<Box>();
        double lowest = 0;
        double bandTop = Margin;
        for (int row = 0; row < heights.Length; row++)
        {
            Box[] mine = _rooms[row];
            double height = row == 0 ? Margin - mine.Min(b => b.Top) : heights[row - 1] + RowGap;
            foreach (Box box in mine)
                foreach (Box earlier in rooms.Where(r => r.Left < box.Right + RowGap && box.Left < r.Right + RowGap))
                    height = Math.Max(height, earlier.Bottom + RowGap - box.Top);
            if (height + mine.Max(b => b.Bottom) - bandTop > bandHeight && rooms.Count > 0)
            {
                double end = lowest;
                bands.Add(end + BandGap / 2);
                bandTop = end + BandGap;
                height = bandTop - mine.Min(b => b.Top);
                rooms.Clear();
                lowest = 0;
            }

            heights[row] = height;
            // What is so far above that nothing on a later row can reach it needs no more looking at.
            rooms.RemoveAll(r => r.Bottom + RowGap - highest <= height);
            rooms.AddRange(mine.Select(b => new Box(b.Left, b.Top + height, b.Right, b.Bottom + height)));
            lowest = Math.Max(lowest, height + mine.Max(b => b.Bottom));
        }

        return heights;
    }

    private double PointX(int point) =>
        _sides.Feed.Layer.TryGetValue(point, out int layer)
            ? _feedColumns.PointX(layer)
            : _returnColumns.PointX(_sides.Return.Layer[point]);

    private double BusX(int point)
    {
        bool isFeed = _sides.Feed.Layer.TryGetValue(point, out int layer);
        SideBus bus = isFeed ? _feedBuses[point] : _returnBuses[point];
        if (!bus.IsUpright)
            return PointX(point);
        return isFeed
            ? _feedColumns.TrackX(layer, bus.Track)
            : _returnColumns.TrackX(_sides.Return.Layer[point], bus.Track);
    }

    private bool IsLive(int point) => _live.Contains(point);

    private double[] Slots(CircuitSide side, double first)
    {
        double[] slots = new double[side.Layers];
        slots[0] = first;
        foreach (int point in side.Points)
            slots[side.Layer[point]] = Math.Max(
                slots[side.Layer[point]],
                LabelText.Width(PointLines(point), hasFigures: true) + SlotPadding
            );
        foreach (SidePart part in side.Hung.Values.Concat(side.Loops))
            slots[side.Layer[part.Far]] = Math.Max(slots[side.Layer[part.Far]], PartWidth(part) + SlotPadding);
        return slots;
    }

    private static int[] Tracks(CircuitSide side, Dictionary<int, SideBus> buses)
    {
        int[] tracks = new int[side.Layers];
        foreach (SideBus bus in buses.Values.Where(b => b.IsUpright))
            tracks[side.Layer[bus.Point]] = Math.Max(tracks[side.Layer[bus.Point]], bus.Track + 1);
        return tracks;
    }

    private double SourceWidth() =>
        Math.Max(SourceRoom, LabelText.Width([_graph.SourceName, _graph.SourceFigures], hasFigures: true))
        + SlotPadding;

    private double BetweenWidth(SidePart part)
    {
        double name = LabelText.Width(Name(part.Part), hasFigures: false),
            figures = LabelText.Width([part.Part.Figures], hasFigures: true),
            symbol = SymbolSize.Of(part.Part.Symbol).HalfWidth;
        return _labelsBesideLoads
            ? 2 * (Math.Max(name, figures) + symbol + BesideGap)
            : Math.Max(Math.Max(name, figures), 2 * symbol + 8);
    }

    private double PartWidth(SidePart part) =>
        Math.Max(
            LabelText.Width([.. Name(part.Part), part.Part.Figures], hasFigures: true),
            2 * SymbolSize.Of(part.Part.Symbol).HalfWidth + 8
        );

    // The loads' column is one: its names need not be broken as short as those of the many columns beside it.
    private IReadOnlyList<string> Name(CircuitPart part) =>
        [.. LabelText.Wrap(part.Name, part.IsLoad ? Math.Max(_longestLine, LoadLine) : _longestLine)];

    private IReadOnlyList<string> PointLines(int point) =>
        [.. LabelText.Wrap(_graph.Points[point].Name, _longestLine), _graph.Points[point].Figures];
}
