namespace Lighting.Calc.Cli.Rendering;

/// <summary>Keeps the worst of many rows, however many come by.</summary>
/// <remarks>Worse: does not suit, then not judged; then more faults; then less headroom of its fuse; then the greater
/// drop; then the earlier.</remarks>
internal sealed class WorstRows(int most)
{
    private readonly PriorityQueue<FleetRow, Badness> _kept = new();
    private long _seen;

    public void Add(FleetRow row)
    {
        _kept.Enqueue(row, Badness.Of(row, _seen++));
        if (_kept.Count > most)
            _kept.Dequeue();
    }

    /// <summary>Worst first.</summary>
    public IReadOnlyList<FleetRow> InOrder() =>
        [.. _kept.UnorderedItems.OrderByDescending(i => i.Priority).Select(i => i.Element)];

    private readonly record struct Badness(int Gravity, int Faults, double Overload, double Drop, long Earlier)
        : IComparable<Badness>
    {
        public static Badness Of(FleetRow row, long place) =>
            new(
                row.Outcome switch
                {
                    FleetOutcome.Suits => 0,
                    FleetOutcome.NotJudged => 1,
                    _ => 2,
                },
                row.Faults,
                row.UsableAmperes > 0 ? row.ContinuousAmperes!.Value / row.UsableAmperes.Value : 0,
                row.DropPercent ?? 0,
                -place
            );

        public int CompareTo(Badness other) =>
            (Gravity, Faults, Overload, Drop, Earlier).CompareTo(
                (other.Gravity, other.Faults, other.Overload, other.Drop, other.Earlier)
            );
    }
}
