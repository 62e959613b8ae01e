using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Finds the point where the feed of a bike branches, and its branches.</summary>
/// <remarks>With every contact closed, so that a branch is one in every setting.</remarks>
internal sealed class FeedBranches
{
    private readonly Bike _bike;
    private readonly HarnessGraph _graph;
    private readonly ContactSet _all;

    public FeedBranches(Bike bike, HarnessGraph graph)
    {
        (_bike, _graph) = (bike, graph);
        _all = ContactSet.Where(graph.Contacts.Length, _ => true);
    }

    /// <summary>The last point that every lamp of some is fed through, from a point on.</summary>
    public int Tap(int start, IReadOnlyCollection<int> lamps)
    {
        Reached from = Walk(start, without: -1);
        int[] feeds = [.. lamps.Select(l => FeedOf(l, from)).Distinct()];
        return Enumerable
            .Range(0, _graph.Points.Length)
            .Where(p => from.Reaches(p) && (p == start || feeds.All(f => f == p || !Walk(start, p).Reaches(f))))
            .MaxBy(from.CostTo);
    }

    /// <summary>The lamps that the live terminal feeds without another lamp between.</summary>
    public ImmutableArray<int> Fed() => [.. Walk(_graph.Live, -1).Lamps.Select(l => l.Lamp)];

    /// <summary>Whether everything that is fed is fed through one fuse.</summary>
    public bool FeedsAll(int fuse) => Fed() is { IsEmpty: false } fed && FedThrough(fuse).Length == fed.Length;

    /// <summary>The lamps that are fed through one fuse alone.</summary>
    public ImmutableArray<int> FedThrough(int fuse)
    {
        Reached from = Walk(_graph.Live, without: -1),
            around = Around(fuse);
        return [.. Fed().Where(l => !around.Reaches(FeedOf(l, from)))];
    }

    /// <summary>What the live terminal reaches with one fuse out.</summary>
    public Reached Around(int fuse) =>
        _graph.From(
            _graph.Live,
            p => p.Joins(_all) && p != _graph.Fuses[fuse] ? 1 : HarnessGraph.NoWay,
            pastBattery: false
        );

    /// <summary>The branches at a point, of what is fed through it. The contacts of one switch share their terminal
    /// there: they are one branch.</summary>
    public ImmutableArray<FeedBranch> At(int tap, IReadOnlyCollection<int> lamps, IReadOnlySet<int>? within = null) =>
        Joined(Each(tap, lamps, within));

    /// <summary>What is behind a branch in parts of its own, at the point where it branches next; null where it does
    /// not. Contacts of one switch are parted behind the switch.</summary>
    public ImmutableArray<FeedBranch>? Parted(FeedBranch branch)
    {
        if (branch.Points.IsEmpty)
            return null;
        ImmutableArray<FeedBranch> heads = Each(branch.Source, branch.Lamps, branch.Points);
        ImmutableArray<FeedBranch> parts =
            heads.Length > 1
                ? Joined(heads) is { Length: > 1 } joined
                    ? joined
                    : [.. heads.Select(AfterContacts)]
            : Tap(branch.Source, branch.Lamps) is var tap && tap != branch.Source
                ? At(tap, branch.Lamps, branch.Points)
            : [];
        // Contacts of one switch alone: behind the switch.
        if (parts is [var only] && only.Source != branch.Source && only.Lamps.Length == branch.Lamps.Length)
            return Parted(only);
        return parts.Length > 1 && parts.Sum(p => p.Lamps.Length) == branch.Lamps.Length ? parts : null;
    }

    private ImmutableArray<FeedBranch> Each(int tap, IReadOnlyCollection<int> lamps, IReadOnlySet<int>? within)
    {
        var branches = ImmutableArray.CreateBuilder<FeedBranch>();
        var seen = new HashSet<int>();
        Reached fromTap = Walk(tap, -1);
        foreach (
            HarnessPart head in _graph.Parts.Where(p => p.Kind != HarnessPartKind.Lamp && (p.A == tap || p.B == tap))
        )
        {
            int next = head.Other(tap);
            if (next == _graph.Live || next == _graph.Earth || seen.Contains(next) || within?.Contains(next) == false)
                continue;
            Reached beyond = Walk(next, tap);
            if (beyond.Reaches(_graph.Live))
                continue;
            ImmutableHashSet<int> points = [.. Enumerable.Range(0, _graph.Points.Length).Where(beyond.Reaches)];
            seen.UnionWith(points);
            ImmutableArray<int> its = [.. lamps.Where(l => points.Contains(FeedOf(l, fromTap)))];
            if (!its.IsEmpty)
                branches.Add(
                    new FeedBranch(
                        tap,
                        [
                            .. _graph.Parts.Where(p =>
                                p.Kind != HarnessPartKind.Lamp
                                && (p.A == tap && points.Contains(p.B) || p.B == tap && points.Contains(p.A))
                            ),
                        ],
                        points,
                        its
                    )
                );
        }

        foreach (int lamp in lamps.Where(l => FeedOf(l, fromTap) == tap))
            branches.Add(new FeedBranch(tap, [_graph.Lamps[lamp]], [], [lamp]));
        return branches.ToImmutable();
    }

    // Branches behind contacts of one switch become one.
    private ImmutableArray<FeedBranch> Joined(ImmutableArray<FeedBranch> branches)
    {
        for (int i = 0; i < branches.Length; i++)
            for (int j = branches.Length - 1; j > i; j--)
                if (SwitchesOf(branches[i]).Overlaps(SwitchesOf(branches[j])))
                {
                    FeedBranch one = branches[i],
                        other = branches[j];
                    branches = branches
                        .RemoveAt(j)
                        .SetItem(
                            i,
                            new FeedBranch(
                                one.Source,
                                [.. one.Heads, .. other.Heads],
                                one.Points.Union(other.Points),
                                [.. one.Lamps, .. other.Lamps]
                            )
                        );
                    j = branches.Length;
                }

        return branches;
    }

    private HashSet<string> SwitchesOf(FeedBranch branch) =>
        branch
            .Heads.Where(h => h.Kind == HarnessPartKind.Contact)
            .Select(h => _bike.Switches[h.Index].Switch)
            .ToHashSet(Name.Comparer);

    // Behind its contact, where that is its only head.
    private FeedBranch AfterContacts(FeedBranch branch)
    {
        int[] far = [.. branch.Heads.Select(h => h.Other(branch.Source)).Distinct()];
        if (far is not [var point] || branch.Heads.Any(h => h.Kind != HarnessPartKind.Contact))
            return branch;
        return branch with
        {
            Source = point,
            Heads =
            [
                .. _graph.Parts.Where(p =>
                    (p.A == point || p.B == point)
                    && !branch.Heads.Contains(p)
                    && (p.Kind != HarnessPartKind.Lamp || branch.Lamps.Contains(p.Index))
                ),
            ],
        };
    }

    private static int FeedOf(HarnessPart lamp, Reached from) => from.Reaches(lamp.A) ? lamp.A : lamp.B;

    private int FeedOf(int lamp, Reached from) => FeedOf(_graph.Lamps[lamp], from);

    // Over everything that passes current without a load, never past a battery terminal.
    private Reached Walk(int start, int without) =>
        _graph.From(
            start,
            p => p.Joins(_all) && p.A != without && p.B != without ? 1 : HarnessGraph.NoWay,
            pastBattery: false
        );
}
