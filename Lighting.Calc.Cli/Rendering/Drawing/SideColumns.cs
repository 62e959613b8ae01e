namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>Where the columns of one side stand: for each layer a slot for symbols and labels, the points, and a
/// channel for uprights.</summary>
internal sealed class SideColumns
{
    private const double TrackWidth = 7;
    private const double LeastChannel = 10;

    private readonly double[] _slots;
    private readonly double[] _channels;
    private readonly double[] _points;
    private readonly double[] _edges;
    private readonly int _direction;

    /// <summary>Sets the columns of a side.</summary>
    /// <param name="slots">The width of each layer's slot.</param>
    /// <param name="tracks">How many tracks each layer's channel has.</param>
    /// <param name="direction">1 from the left edge to the right, −1 from the right edge to the left.</param>
    public SideColumns(double[] slots, int[] tracks, int direction)
    {
        _slots = slots;
        _channels = [.. tracks.Select(t => LeastChannel + Math.Max(0, t) * TrackWidth)];
        _points = new double[slots.Length];
        _edges = new double[slots.Length];
        _direction = direction;
        Width = slots.Sum() + _channels.Sum();
    }

    public double Width { get; }

    /// <summary>Where each layer begins, on the side of the root: only level conductors cross there.</summary>
    public IReadOnlyList<double> Edges => _edges;

    /// <summary>Places the columns from the edge of the drawing.</summary>
    public void Place(double edge)
    {
        for (int layer = 0; layer < _slots.Length; layer++)
        {
            _edges[layer] = edge;
            edge += _direction * _slots[layer];
            _points[layer] = edge;
            edge += _direction * _channels[layer];
        }
    }

    public double PointX(int layer) => _points[layer];

    public double SlotMiddle(int layer) => _points[layer] - _direction * _slots[layer] / 2;

    public double TrackX(int layer, int track) => _points[layer] + _direction * (8 + track * TrackWidth);
}
