namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>The upright conductor that joins a point to the rows of its parts.</summary>
/// <param name="Point">The point.</param>
/// <param name="Row">Its row.</param>
/// <param name="Taps">The rows that leave it towards the loads or arrive from a loop.</param>
/// <param name="Track">Its place in the channel beside the point, 0 nearest to it.</param>
internal sealed record SideBus(int Point, int Row, IReadOnlyList<BusTap> Taps, int Track)
{
    public int Top => Math.Min(Row, Taps.Select(t => t.Row).DefaultIfEmpty(Row).Min());

    public int Bottom => Math.Max(Row, Taps.Select(t => t.Row).DefaultIfEmpty(Row).Max());

    public bool IsUpright => Top < Bottom;

    /// <summary>The buses of a side, each with a track on which it meets no other.</summary>
    public static Dictionary<int, SideBus> Of(
        CircuitSide side,
        IEnumerable<SidePart> between,
        Func<SidePart, int> near,
        CircuitRows rows
    )
    {
        ILookup<int, BusTap> taps = side
            .Hung.Values.Select(p => (At: p.Near, Tap: new BusTap(rows.Of(p.Far), p.Part.IsLive)))
            .Concat(
                side.Loops.SelectMany(p =>
                    new[]
                    {
                        (At: p.Near, Tap: new BusTap(rows.Of(p), p.Part.IsLive)),
                        (At: p.Far, Tap: new BusTap(rows.Of(p), p.Part.IsLive)),
                    }
                )
            )
            .Concat(between.Select(p => (At: near(p), Tap: new BusTap(rows.Of(p), p.Part.IsLive))))
            .ToLookup(t => t.At, t => t.Tap);
        var buses = new Dictionary<int, SideBus>();
        foreach (
            IGrouping<int, SideBus> layer in side
                .Points.Select(p => new SideBus(p, rows.Of(p), [.. taps[p]], 0))
                .GroupBy(b => side.Layer[b.Point])
        )
        {
            var ends = new List<int>();
            foreach (SideBus bus in layer.OrderBy(b => b.Top))
            {
                int track = bus.IsUpright ? ends.FindIndex(end => end < bus.Top) : 0;
                if (bus.IsUpright && track < 0)
                {
                    track = ends.Count;
                    ends.Add(bus.Bottom);
                }
                else if (bus.IsUpright)
                {
                    ends[track] = bus.Bottom;
                }

                buses.Add(bus.Point, bus with { Track = track });
            }
        }

        return buses;
    }
}

/// <summary>A row that meets a bus.</summary>
/// <param name="Row">The row.</param>
/// <param name="IsLive">Whether current flows in it.</param>
internal sealed record BusTap(int Row, bool IsLive);
