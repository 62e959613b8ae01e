using Lighting.Calc.Cli.Rendering.Drawing;

namespace Lighting.Calc.Tests.Rendering;

/// <summary>What the strokes of several sheets join, read off as a person would: ends that touch, and marks of the same
/// letter.</summary>
internal sealed class SheetNets
{
    private readonly List<(int Sheet, DrawnLine Line)> _strokes = [];
    private readonly List<(int Sheet, DrawnMark Mark)> _marks = [];
    private readonly Dictionary<int, (int Sheet, double X, double Y)> _points = [];
    private readonly Dictionary<object, object> _roots = [];

    public SheetNets(CircuitDrawing whole, IReadOnlyList<double> cuts, IReadOnlyList<CircuitDrawing> sheets)
    {
        for (int i = 0; i < sheets.Count; i++)
        {
            int sheet = i,
                column = i % (cuts.Count + 1),
                band = i / (cuts.Count + 1);
            _strokes.AddRange(sheets[i].Lines.Select(l => (sheet, l)));
            _marks.AddRange(sheets[i].Marks.Select(m => (sheet, m)));
            // Dots stand in the order of the uncut drawing, the points first in theirs.
            int[] here =
            [
                .. Enumerable
                    .Range(0, whole.Dots.Count)
                    .Where(d =>
                        cuts.Count(c => c < whole.Dots[d].X) == column
                        && whole.Bands.Count(b => b < whole.Dots[d].Y) == band
                    ),
            ];
            int[] points = [.. Enumerable.Range(0, whole.Dots.Count).Where(d => !whole.Dots[d].IsJunction)];
            for (int d = 0; d < here.Length; d++)
                if (!whole.Dots[here[d]].IsJunction)
                    _points[Array.IndexOf(points, here[d])] = (sheet, sheets[i].Dots[d].X, sheets[i].Dots[d].Y);
        }

        (int Sheet, DrawnLine Line)[] leads = [.. _strokes.Where(s => s.Line.Part is null)];
        foreach (var lead in leads)
        {
            foreach (
                var other in leads.Where(o =>
                    o.Sheet == lead.Sheet
                    && (Ends(lead.Line).Any(e => Holds(o.Line, e)) || Ends(o.Line).Any(e => Holds(lead.Line, e)))
                )
            )
                Merge(lead, other);
            foreach (
                var (number, place) in _points.Where(p =>
                    p.Value.Sheet == lead.Sheet && Holds(lead.Line, (p.Value.X, p.Value.Y))
                )
            )
                Merge(lead, number);
            foreach (
                var mark in _marks.Where(m => m.Sheet == lead.Sheet && Ends(lead.Line).Any(e => Touches(m.Mark, e)))
            )
                Merge(lead, Letter(mark.Mark));
        }
    }

    public int OfPoint(int point) => Root(point).GetHashCode();

    /// <summary>The nets at the two ends of a part, whose pieces may lie on several sheets.</summary>
    public int[] OfEnds(int part)
    {
        var ends = new List<int>();
        foreach (var (sheet, line) in _strokes.Where(s => s.Line.Part == part))
        {
            foreach (
                (double X, double Y) end in Ends(line)
                    .Where(e => !_marks.Any(m => m.Sheet == sheet && Touches(m.Mark, e)))
            )
            {
                object[] there =
                [
                    .. _strokes
                        .Where(s => s.Sheet == sheet && s.Line.Part is null && Holds(s.Line, end))
                        .Select(s => Root(s)),
                    .. _points
                        .Where(p =>
                            p.Value.Sheet == sheet
                            && Math.Abs(p.Value.X - end.X) < 0.01
                            && Math.Abs(p.Value.Y - end.Y) < 0.01
                        )
                        .Select(p => Root(p.Key)),
                ];
                ends.Add(Assert.Single(there.Distinct()).GetHashCode());
            }
        }

        Assert.Equal(2, ends.Count);
        return [.. ends];
    }

    private static string Letter(DrawnMark mark) => mark.Text.Split('→')[0];

    private static IEnumerable<(double X, double Y)> Ends(DrawnLine line) => [(line.X1, line.Y1), (line.X2, line.Y2)];

    private static bool Holds(DrawnLine line, (double X, double Y) at) =>
        at.X > line.X1 - 0.01 && at.X < line.X2 + 0.01 && at.Y > line.Y1 - 0.01 && at.Y < line.Y2 + 0.01;

    private static bool Touches(DrawnMark mark, (double X, double Y) at) =>
        at.X > mark.Bounds.Left - 0.01
        && at.X < mark.Bounds.Right + 0.01
        && at.Y > mark.Bounds.Top - 0.01
        && at.Y < mark.Bounds.Bottom + 0.01;

    private void Merge(object a, object b)
    {
        (a, b) = (Root(a), Root(b));
        if (!Equals(a, b))
            _roots[a] = b;
    }

    private object Root(object of)
    {
        while (_roots.TryGetValue(of, out object? above))
            of = above;
        return of;
    }
}
