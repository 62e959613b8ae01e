namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>A level stroke of a row with what stands on, above and below it; heights count from the row's
/// line.</summary>
internal sealed class LevelItem(int row, double end1, double end2, bool isLive, int? part = null)
{
    private const double Gap = 2.5;

    private readonly List<(
        double X,
        LabelAnchor Anchor,
        IReadOnlyList<string> Lines,
        bool HasFigures,
        LabelPlace Place
    )> _labels = [];
    private double _above = 2;
    private double _below = 2;

    public int Row => row;

    public double Left => Math.Min(end1, end2);

    public double Right => Math.Max(end1, end2);

    public bool IsLive => isLive;

    /// <summary>The number of the part it is, if it is one.</summary>
    public int? Part => part;

    public SymbolKind? Symbol { get; private set; }

    public double SymbolX { get; private set; }

    public LevelItem With(SymbolKind kind, double x)
    {
        SymbolSize size = SymbolSize.Of(kind);
        Symbol = kind == SymbolKind.Wire ? null : kind;
        SymbolX = x;
        _above = Math.Max(_above, size.Above);
        _below = Math.Max(_below, size.Below);
        return this;
    }

    /// <summary>Keeps room for a symbol that another item draws.</summary>
    public LevelItem Raised(double room)
    {
        _above = Math.Max(_above, room);
        _below = Math.Max(_below, room);
        return this;
    }

    public LevelItem Above(double x, LabelAnchor anchor, IReadOnlyList<string> lines, bool hasFigures = true)
    {
        _labels.Add((x, anchor, lines, hasFigures, LabelPlace.Above));
        return this;
    }

    public LevelItem Below(double x, LabelAnchor anchor, IReadOnlyList<string> lines)
    {
        _labels.Add((x, anchor, lines, true, LabelPlace.Below));
        return this;
    }

    /// <summary>A label that stands on the line itself, beside the symbol.</summary>
    public LevelItem OnLine(double x, LabelAnchor anchor, IReadOnlyList<string> lines, bool hasFigures)
    {
        _labels.Add((x, anchor, lines, hasFigures, LabelPlace.OnLine));
        return this;
    }

    /// <summary>The labels, with the row's line at a height.</summary>
    public IEnumerable<DrawnLabel> Labels(double height)
    {
        foreach (
            (double x, LabelAnchor anchor, IReadOnlyList<string> lines, bool hasFigures, LabelPlace place) in _labels
        )
        {
            double width = LabelText.Width(lines, hasFigures),
                tall = lines.Count * LabelText.LineHeight;
            double top = place switch
            {
                LabelPlace.Above => height - _above - Gap - tall,
                LabelPlace.OnLine => height - 2 - Gap - tall,
                _ => height + _below + Gap,
            };
            double left = anchor switch
            {
                LabelAnchor.Start => x,
                LabelAnchor.Middle => x - width / 2,
                _ => x - width,
            };
            yield return new DrawnLabel(
                x,
                top,
                anchor,
                lines,
                hasFigures,
                isLive,
                new Box(left, top, left + width, top + tall)
            );
        }
    }

    /// <summary>The rooms it takes, from the row's line.</summary>
    public IEnumerable<Box> Rooms()
    {
        yield return new Box(Left, -2, Right, 2);
        if (Symbol is { } kind)
        {
            SymbolSize size = SymbolSize.Of(kind);
            yield return new Box(SymbolX - size.HalfWidth, -size.Above, SymbolX + size.HalfWidth, size.Below);
        }

        foreach (DrawnLabel label in Labels(0))
            yield return label.Bounds;
    }

    private enum LabelPlace
    {
        Above,
        OnLine,
        Below,
    }
}
