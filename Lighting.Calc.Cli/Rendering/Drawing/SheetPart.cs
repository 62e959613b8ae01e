namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>One sheet cut out of a drawing.</summary>
/// <remarks>
/// Conductors that leave it end in marks beyond all else on that side. A mark that would lie on a nearer one's, or on
/// its conductor, stands farther out.
/// </remarks>
internal sealed class SheetPart
{
    /// <summary>What is left free at the edges of a sheet.</summary>
    public const double Margin = 8;

    private const double Gap = 6;
    private const double MarkHeight = 15;
    private const double MarkPadding = 3;

    /// <summary>Half of what a stroke takes.</summary>
    public const double HalfStroke = 2;

    private const double DotRadius = 4;

    private readonly CircuitDrawing _drawing;
    private readonly int _column;
    private readonly int _band;
    private readonly int _columns;
    private readonly Box _cut;
    private readonly Crossing[] _crossings;
    private readonly Box _content;
    private readonly Dictionary<Crossing, DrawnMark> _before = [];
    private readonly Dictionary<Crossing, DrawnMark> _after = [];

    public SheetPart(
        CircuitDrawing drawing,
        int column,
        int band,
        double[] across,
        double[] down,
        ILookup<(bool IsUpright, double Cut), Crossing> crossings
    )
    {
        (_drawing, _column, _band, _columns) = (drawing, column, band, across.Length - 1);
        _cut = new Box(across[column], down[band], across[column + 1], down[band + 1]);
        _crossings =
        [
            .. new[] { _cut.Left, _cut.Right }
                .SelectMany(x => crossings[(false, x)])
                .Where(c => c.Place > _cut.Top && c.Place < _cut.Bottom),
            .. new[] { _cut.Top, _cut.Bottom }
                .SelectMany(y => crossings[(true, y)])
                .Where(c => c.Place > _cut.Left && c.Place < _cut.Right),
        ];
        _content = Content();
        foreach (Crossing crossing in _crossings.OrderByDescending(c => c.Place))
            Mark(crossing);
    }

    /// <summary>Where it begins in the uncut drawing, marks included.</summary>
    public double Left => Marks.Select(m => m.Bounds.Left).Append(_content.Left).Min();

    private double Top => Marks.Select(m => m.Bounds.Top).Append(_content.Top).Min();

    private IEnumerable<DrawnMark> Marks => _before.Values.Concat(_after.Values);

    /// <summary>The sheet, its left edge at a place of the uncut drawing.</summary>
    public CircuitDrawing Draw(double fromLeft)
    {
        DrawnMark[] marks = [.. Marks];
        double left = Margin - fromLeft,
            top = Margin - Top;
        return new CircuitDrawing(
            left + Margin + marks.Select(m => m.Bounds.Right).Append(_content.Right).Max(),
            top + Margin + marks.Select(m => m.Bounds.Bottom).Append(_content.Bottom).Max(),
            [
                .. _drawing
                    .Lines.Where(IsHere)
                    .Select(Clipped)
                    .Select(l => l with { X1 = l.X1 + left, Y1 = l.Y1 + top, X2 = l.X2 + left, Y2 = l.Y2 + top }),
            ],
            [.. _drawing.Symbols.Where(s => IsHere(s.X, s.Y)).Select(s => s with { X = s.X + left, Y = s.Y + top })],
            [.. _drawing.Dots.Where(d => IsHere(d.X, d.Y)).Select(d => d with { X = d.X + left, Y = d.Y + top })],
            [
                .. _drawing
                    .Labels.Where(IsHere)
                    .Select(l => l with { X = l.X + left, Top = l.Top + top, Bounds = Moved(l.Bounds, left, top) }),
            ]
        )
        {
            Marks = [.. marks.Select(m => m with { Bounds = Moved(m.Bounds, left, top) })],
        };
    }

    // What stands on the sheet, without the ends of conductors that leave it.
    private Box Content()
    {
        Box[] rooms =
        [
            .. _drawing.Labels.Where(IsHere).Select(l => l.Bounds),
            .. _drawing.Symbols.Where(s => IsHere(s.X, s.Y)).Select(Room),
            .. _drawing.Dots.Where(d => IsHere(d.X, d.Y)).Select(Room),
            .. _drawing.Lines.Where(IsHere).Select(Room),
        ];
        return rooms.Length == 0
            ? new Box(0, 0, 0, 0)
            : new Box(rooms.Min(r => r.Left), rooms.Min(r => r.Top), rooms.Max(r => r.Right), rooms.Max(r => r.Bottom));
    }

    /// <summary>The room that a dot takes.</summary>
    public static Box Room(DrawnDot dot) =>
        new(dot.X - DotRadius, dot.Y - DotRadius, dot.X + DotRadius, dot.Y + DotRadius);

    /// <summary>The room that a symbol takes.</summary>
    public static Box Room(DrawnSymbol symbol)
    {
        SymbolSize size = SymbolSize.Of(symbol.Kind);
        return new Box(
            symbol.X - size.HalfWidth,
            symbol.Y - size.Above,
            symbol.X + size.HalfWidth,
            symbol.Y + size.Below
        );
    }

    private Box Room(DrawnLine line)
    {
        // Beside a level conductor that leaves the sheet stands its mark; its height counts, its length does not.
        bool leaves = line.Y1 == line.Y2 && (line.X1 < _cut.Left || line.X2 > _cut.Right);
        double side = leaves ? MarkHeight / 2 : HalfStroke;
        double left = line.X1 < _cut.Left ? Math.Min(line.X2, _cut.Right) : line.X1,
            right = line.X2 > _cut.Right ? Math.Max(line.X1, _cut.Left) : line.X2;
        double top = line.Y1 < _cut.Top ? Math.Min(line.Y2, _cut.Bottom) : line.Y1,
            bottom = line.Y2 > _cut.Bottom ? Math.Max(line.Y1, _cut.Top) : line.Y2;
        return new Box(
            Math.Min(left, right) - HalfStroke,
            Math.Min(top, bottom) - side,
            Math.Max(left, right) + HalfStroke,
            Math.Max(top, bottom) + side
        );
    }

    // From the last place to the first: of uprights side by side the leftmost goes farthest, and its mark reaches
    // right, under those before it.
    private void Mark(Crossing crossing)
    {
        bool isAfter = crossing.Cut == (crossing.IsUpright ? _cut.Bottom : _cut.Right);
        Dictionary<Crossing, DrawnMark> side = isAfter ? _after : _before;
        int step = isAfter ? 1 : -1,
            other =
                (crossing.IsUpright ? _band + step : _band) * _columns
                + (crossing.IsUpright ? _column : _column + step);
        string text = $"{crossing.Letter}→{other + 1}";
        double width = LabelText.Width(text, isBold: true) + 2 * MarkPadding;
        Box[] taken = [.. side.Where(m => m.Key.IsUpright == crossing.IsUpright).Select(m => m.Value.Bounds)];
        Box box;
        if (crossing.IsUpright)
        {
            double edge = isAfter ? _content.Bottom + Gap : _content.Top - Gap;
            Box[] under =
            [
                .. taken.Where(t => t.Left < crossing.Place + width + Gap && t.Right > crossing.Place - 2 * HalfStroke),
            ];
            foreach (Box mark in under)
                edge = isAfter ? Math.Max(edge, mark.Bottom + HalfStroke) : Math.Min(edge, mark.Top - HalfStroke);
            box = isAfter
                ? new Box(crossing.Place - MarkPadding, edge, crossing.Place + width - MarkPadding, edge + MarkHeight)
                : new Box(crossing.Place - MarkPadding, edge - MarkHeight, crossing.Place + width - MarkPadding, edge);
        }
        else
        {
            double edge = isAfter ? _content.Right + Gap : _content.Left - Gap;
            foreach (
                Box mark in taken.Where(t =>
                    t.Top < crossing.Place + MarkHeight / 2 + HalfStroke
                    && t.Bottom > crossing.Place - MarkHeight / 2 - HalfStroke
                )
            )
                edge = isAfter ? Math.Max(edge, mark.Right + Gap) : Math.Min(edge, mark.Left - Gap);
            box = new Box(
                isAfter ? edge : edge - width,
                crossing.Place - MarkHeight / 2,
                isAfter ? edge + width : edge,
                crossing.Place + MarkHeight / 2
            );
        }

        side.Add(crossing, new DrawnMark(text, box, crossing.IsLive));
    }

    private bool IsHere(double x, double y) => x > _cut.Left && x < _cut.Right && y > _cut.Top && y < _cut.Bottom;

    private bool IsHere(DrawnLabel label) =>
        IsHere((label.Bounds.Left + label.Bounds.Right) / 2, (label.Bounds.Top + label.Bounds.Bottom) / 2);

    private bool IsHere(DrawnLine line) =>
        line.X1 < _cut.Right && line.X2 > _cut.Left && line.Y1 < _cut.Bottom && line.Y2 > _cut.Top;

    private DrawnLine Clipped(DrawnLine line)
    {
        if (line.X1 < _cut.Left)
            line = line with { X1 = At(_before, line).Bounds.Right };
        if (line.X2 > _cut.Right)
            line = line with { X2 = At(_after, line).Bounds.Left };
        if (line.Y1 < _cut.Top)
            line = line with { Y1 = At(_before, line).Bounds.Bottom };
        if (line.Y2 > _cut.Bottom)
            line = line with { Y2 = At(_after, line).Bounds.Top };
        return line;
    }

    private static DrawnMark At(Dictionary<Crossing, DrawnMark> marks, DrawnLine line)
    {
        bool isUpright = line.X1 == line.X2;
        return marks.First(m => m.Key.IsUpright == isUpright && m.Key.Place == (isUpright ? line.X1 : line.Y1)).Value;
    }

    private static Box Moved(Box box, double right, double down) =>
        new(box.Left + right, box.Top + down, box.Right + right, box.Bottom + down);
}
