using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Two bikes side by side, or one before and after a change: lamps, circuits and fuses by their names, and
/// what the checks find in one alone.</summary>
public sealed class BikeComparison
{
    private BikeComparison(BikeReport before, BikeReport after) => (Before, After) = (before, after);

    /// <summary>The whole verdict on the first.</summary>
    public BikeReport Before { get; }

    /// <summary>The whole verdict on the second.</summary>
    public BikeReport After { get; }

    /// <summary>Every lamp and other load, in the order of the first list, then those that the second alone
    /// has.</summary>
    public ImmutableArray<LampChange> Lamps { get; private init; }

    /// <summary>The circuits, in the same order.</summary>
    internal ImmutableArray<CircuitChange> Circuits { get; private init; }

    /// <summary>The fuses, in the same order.</summary>
    public ImmutableArray<Change<FuseSuitability?>> Fuses { get; private init; }

    /// <summary>The breakdown of the lamp of the first with the largest drop; null where no drop is known.</summary>
    public VoltageDropBreakdown? WorstDropBefore => Worst(Before);

    /// <summary>The same of the second.</summary>
    public VoltageDropBreakdown? WorstDropAfter => Worst(After);

    /// <summary>What is found in the second alone: another kind of finding, or one about another subject; worst
    /// first.</summary>
    public ImmutableArray<Finding> FindingsGained => Alone(After, Before);

    /// <summary>What is found in the first alone; worst first.</summary>
    public ImmutableArray<Finding> FindingsLost => Alone(Before, After);

    /// <summary>Checks two bikes and compares them.</summary>
    /// <param name="before">The first.</param>
    /// <param name="after">The second.</param>
    /// <param name="options">How both are checked; null for the defaults. A supply voltage is that of both.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">A bike has no circuit, its charging list is no curve, or the condition names
    /// what it does not have, leaves too many settings or none that can be solved.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option, or a value of a bike, is outside its range.</exception>
    /// <exception cref="NetworkNotSolvedException">A stretch of the ride, or direct lighting in its heaviest setting,
    /// has no operating point.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static BikeComparison Evaluate(
        Bike before,
        Bike after,
        CheckOptions? options = null,
        CancellationToken cancellationToken = default
    ) =>
        Of(
            BikeCheck.Evaluate(before, options, cancellationToken),
            BikeCheck.Evaluate(after, options, cancellationToken),
            (options ?? new CheckOptions()).Fuses
        );

    /// <summary>Compares what was found.</summary>
    internal static BikeComparison Of(BikeReport before, BikeReport after, FuseOptions fuses)
    {
        // Settings that both have are compared alone; two bikes of other switches each in its own.
        ImmutableArray<OperatingPoint> was = Common(before.Settings, after.Settings),
            now = Common(after.Settings, before.Settings);
        ImmutableArray<OperatingPoint?> worstBefore = Worst(before.Bike, was, fuses),
            worstAfter = Worst(after.Bike, now, fuses);
        return new BikeComparison(before, after)
        {
            Lamps =
            [
                .. Both(before.Bike.Lamps, after.Bike.Lamps, l => l.Lamp)
                    .Select(l =>
                        LampOf(
                            l,
                            l.Before < 0 ? null : worstBefore[l.Before],
                            l.After < 0 ? null : worstAfter[l.After],
                            was,
                            now
                        )
                    ),
            ],
            Circuits =
            [
                .. before
                    .Bike.Lamps.Concat(after.Bike.Lamps)
                    .Select(l => l.Circuit)
                    .Distinct(Name.Comparer)
                    .Select(c => CircuitChange.Of(c, was, now)),
            ],
            Fuses =
            [
                .. Both(before.Fuses, after.Fuses, f => f.Fuse.Name)
                    .Select(p => new Change<FuseSuitability?>(
                        p.Before < 0 ? null : before.Fuses[p.Before],
                        p.After < 0 ? null : after.Fuses[p.After]
                    )),
            ],
        };
    }

    private static ImmutableArray<OperatingPoint> Common(
        ImmutableArray<OperatingPoint> points,
        ImmutableArray<OperatingPoint> others
    )
    {
        var known = others.Select(o => o.Setting).ToHashSet();
        ImmutableArray<OperatingPoint> common = [.. points.Where(p => known.Contains(p.Setting))];
        return common.IsEmpty ? points : common;
    }

    // The places of each name in two lists; −1 where one lacks it.
    private static IEnumerable<(int Before, int After)> Both<T>(
        ImmutableArray<T> before,
        ImmutableArray<T> after,
        Func<T, string> name
    )
    {
        var places = new Dictionary<string, int>(Name.Comparer);
        foreach ((int place, T item) in after.Index())
            places.TryAdd(name(item), place);
        foreach ((int place, T item) in before.Index())
            yield return (place, places.Remove(name(item), out int other) ? other : -1);
        foreach (int alone in places.Values.Order())
            yield return (-1, alone);
    }

    // Where it loses most before, as a check has it; after in the same setting, where the other bike has it.
    private static LampChange LampOf(
        (int Before, int After) lamp,
        OperatingPoint? before,
        OperatingPoint? after,
        ImmutableArray<OperatingPoint> was,
        ImmutableArray<OperatingPoint> now
    )
    {
        if (before is not null && lamp.After >= 0)
            after = now.FirstOrDefault(p => p.Setting.Equals(before.Setting)) ?? after;
        else if (after is not null && lamp.Before >= 0)
            before = was.FirstOrDefault(p => p.Setting.Equals(after.Setting));
        FittedLamp? old = lamp.Before < 0 ? null : was[0].Solved.Bike.Lamps[lamp.Before],
            replaced = lamp.After < 0 ? null : now[0].Solved.Bike.Lamps[lamp.After];
        return new LampChange(
            old,
            replaced,
            (before ?? after)?.Setting,
            lamp.Before < 0 ? null : before?.Lamps[lamp.Before],
            lamp.After < 0 ? null : after?.Lamps[lamp.After]
        );
    }

    private static ImmutableArray<OperatingPoint?> Worst(
        Bike bike,
        ImmutableArray<OperatingPoint> points,
        FuseOptions fuses
    ) =>
        [
            .. IntendedOnStates
                .WorstOfEach(bike, points, fuses.MomentarySwitches)
                .Select((p, lamp) => p is not null && PointPair.IsLit(p, lamp) ? p : null),
        ];

    private static VoltageDropBreakdown? Worst(BikeReport report) =>
        report.WorstDrops.MaxBy(d => d.Lamp.Drop!.Value.DecimalFractions);

    private static ImmutableArray<Finding> Alone(BikeReport report, BikeReport other)
    {
        var known = other.Findings.Select(f => (f.Kind, f.Subject)).ToHashSet();
        return [.. report.Findings.Where(f => !known.Contains((f.Kind, f.Subject)))];
    }
}
