namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>The rows of a drawing: each part between the sides, each loop and each dead end has one of its own, each
/// point shares one of those behind it.</summary>
/// <remarks>
/// Rows follow the feed tree, so that its branches never cross. The order of branches is then bettered in sweeps:
/// branches go where their loads' returns are, and the order with the shortest uprights on the return side is kept.
/// </remarks>
internal sealed class CircuitRows
{
    private const int Sweeps = 12;

    private readonly CircuitSides _sides;
    private readonly Dictionary<int, List<SidePart>> _behind = [];
    private readonly Dictionary<SidePart, double> _rowOfItem = [];
    private Dictionary<int, double> _rowOfPoint = [];
    private int _next;

    private CircuitRows(CircuitSides sides)
    {
        _sides = sides;
        foreach (int point in sides.Feed.Points)
            _behind[point] = [];
        foreach (SidePart part in sides.Feed.Hung.Values.Concat(sides.Between))
            _behind[part.Near].Add(part);
        foreach (SidePart loop in sides.Feed.Loops)
            _behind[loop.Near].Add(loop);
    }

    /// <summary>The row of each point and part of a circuit, from 0.</summary>
    public static CircuitRows Of(CircuitSides sides)
    {
        var rows = new CircuitRows(sides);
        rows.Assign();
        double best = rows.Cost();
        Dictionary<int, SidePart[]> order = rows.Order();
        for (int sweep = 0; sweep < Sweeps; sweep++)
        {
            rows.Sweep();
            rows.Assign();
            double cost = rows.Cost();
            if (cost >= best)
                continue;
            best = cost;
            order = rows.Order();
        }

        foreach ((int point, SidePart[] items) in order)
            rows._behind[point] = [.. items];
        rows.Assign();
        rows.Rank();
        return rows;
    }

    /// <summary>How many rows there are.</summary>
    public int Count { get; private set; }

    /// <summary>The row of a point.</summary>
    public int Of(int point) => (int)_rowOfPoint[point];

    /// <summary>The row of a part that has one of its own: one between the sides, or one that closes a loop.</summary>
    public int Of(SidePart part) => (int)_rowOfItem[part];

    private Dictionary<int, SidePart[]> Order() => _behind.ToDictionary(b => b.Key, b => b.Value.ToArray());

    private void Assign()
    {
        _next = 0;
        _rowOfItem.Clear();
        _rowOfPoint = [];
        foreach (int root in _sides.Feed.Points.Where(p => !_sides.Feed.Hung.ContainsKey(p)))
            AssignFeed(root);
        // From the loads to earth: a point takes the first row of those that arrive at it.
        ILookup<int, SidePart> hanging = _sides.Return.Hung.Values.ToLookup(p => p.Near);
        ILookup<int, SidePart> arriving = _sides.Between.ToLookup(p => p.Far);
        int[] deadEnds = [.. _sides.Return.Points.Where(p => !arriving.Contains(p) && !hanging.Contains(p))];
        var used = new HashSet<double>();
        foreach (int point in _sides.Return.Points.OrderByDescending(p => _sides.Return.Layer[p]))
        {
            int deadEnd = Array.IndexOf(deadEnds, point);
            // Dead ends lie between the other rows, spread over the drawing.
            _rowOfPoint[point] =
                deadEnd >= 0
                    ? Free((deadEnd + 0.5) * _next / deadEnds.Length)
                    : arriving[point]
                        .Select(p => _rowOfItem[p])
                        .Concat(hanging[point].Select(p => _rowOfPoint[p.Far]))
                        .Min();
        }

        // A loop on the return side lies just under the point at its far end.
        foreach (SidePart loop in _sides.Return.Loops)
            _rowOfItem[loop] = Free(_rowOfPoint[loop.Far] + 0.1);

        // A row between the whole ones that nothing else has.
        double Free(double row)
        {
            while (row == Math.Floor(row) || !used.Add(row))
                row += 1e-3;
            return row;
        }
    }

    private double AssignFeed(int point)
    {
        double first = double.NaN;
        foreach (SidePart part in _behind[point])
        {
            bool isBranch = _sides.Feed.Hung.TryGetValue(part.Far, out SidePart? hung) && hung == part;
            double row = isBranch ? AssignFeed(part.Far) : _rowOfItem[part] = _next++;
            if (double.IsNaN(first) && !_sides.Feed.Loops.Contains(part))
                first = row;
        }

        return _rowOfPoint[point] = double.IsNaN(first) ? _next++ : first;
    }

    // The branches of each point in the order of the middles of their loads' returns.
    private void Sweep()
    {
        Dictionary<int, double> middle = _sides
            .Between.GroupBy(p => p.Far)
            .ToDictionary(g => g.Key, g => g.Average(p => _rowOfItem[p]));
        foreach (int point in _sides.Feed.Points)
            _behind[point] = [.. _behind[point].OrderBy(item => Wanted(item, middle))];
    }

    private double Wanted(SidePart part, Dictionary<int, double> middle)
    {
        if (middle.TryGetValue(part.Far, out double there))
            return there;
        if (!_sides.Feed.Hung.TryGetValue(part.Far, out SidePart? hung) || hung != part || _behind[part.Far].Count == 0)
            return _rowOfItem.TryGetValue(part, out double row) ? row : _rowOfPoint[part.Far];
        return _behind[part.Far].Average(p => Wanted(p, middle));
    }

    private double Cost()
    {
        double cost = 0;
        foreach (
            IGrouping<int, SidePart> group in _sides
                .Between.GroupBy(p => p.Far)
                .Where(g => g.Key != _sides.Return.Points.FirstOrDefault())
        )
        {
            double[] rows = [.. group.Select(p => _rowOfItem[p])];
            cost += rows.Max() - rows.Min();
        }

        return cost;
    }

    private void Rank()
    {
        double[] used = [.. _rowOfItem.Values.Concat(_rowOfPoint.Values).Distinct().Order()];
        Count = used.Length;
        Dictionary<double, double> rank = used.Select((r, i) => (r, i)).ToDictionary(x => x.r, x => (double)x.i);
        foreach (SidePart item in _rowOfItem.Keys.ToArray())
            _rowOfItem[item] = rank[_rowOfItem[item]];
        foreach (int point in _rowOfPoint.Keys.ToArray())
            _rowOfPoint[point] = rank[_rowOfPoint[point]];
    }
}
