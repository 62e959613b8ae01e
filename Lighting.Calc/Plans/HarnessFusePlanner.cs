using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Deals the branches of a bike with runs, puts the box into it and sizes its wires.</summary>
internal sealed class HarnessFusePlanner
{
    private const int MostTrials = 12;

    // With more branches than these the feed is parted no further of choice.
    private const int MostOfChoice = 9;

    private static readonly Area s_largestWire = Area.FromSquareMillimeters(Constants.Of("largest_plan_mm2"));

    private readonly Bike _given;
    private readonly Bike _bike;
    private readonly string? _main;
    private readonly FusePlanOptions _options;
    private readonly CancellationToken _cancellation;
    private readonly HarnessGraph _graph;
    private readonly FeedBranches _feed;
    private readonly BranchLoads? _loaded;
    private readonly string _problem;

    public HarnessFusePlanner(Bike bike, FusePlanOptions options, CancellationToken cancellationToken)
    {
        _given = bike;
        (_bike, _main) = FuseBox.WithMainAlone(AsOrdinary(bike));
        (_options, _cancellation) = (options, cancellationToken);
        _graph = new HarnessGraph(_bike);
        _feed = new FeedBranches(_bike, _graph);
        _loaded = BranchLoads.Of(_bike, options, cancellationToken, out _problem);
    }

    private BranchLoads Loads => _loaded!;

    public FusePlan Plan()
    {
        if (_loaded is null)
            return FusePlanner.Failed(_problem);
        ImmutableArray<int> fed = _main is null
            ? _feed.Fed()
            : _feed.FedThrough(_bike.Fuses.Select(f => f.Name).ToList().IndexOf(_main));
        if (fed.IsEmpty)
            return FusePlanner.Failed("the battery feeds no lamp or other load");
        ImmutableArray<FeedBranch>[] partings =
        [
            .. Partings(Joined(Parted(_feed.At(_feed.Tap(_graph.Live, fed), fed)))),
        ];
        FuseDealer[] dealers =
        [
            .. partings.Select(p => FusePlanner.Dealer([.. p.Select(Dealt)], _options, _bike)),
        ];
        FusePlan? best = null,
            failed = null;
        foreach ((FuseDeal deal, int of) in FusePlanner.Deals(dealers, _options.Ways))
        {
            // A fuse is only ever raised from its deal: no later deal can be better.
            if (best is not null && (_options.Ways is null || deal.Ratings.Max() >= Largest(best) - 1e-9))
                break;
            FusePlan plan = Fitted(
                [.. deal.Groups.Select(g => g.Select(b => partings[of][b]).ToImmutableArray())],
                [.. deal.Ratings]
            );
            if (!plan.IsFeasible)
                failed ??= plan;
            else if (best is null || Largest(plan) < Largest(best) - 1e-9)
                best = plan;
        }

        return best
            ?? failed
            ?? FusePlanner.Failed(FusePlanner.TooFew(dealers[0], dealers[0].Branches));
    }

    private static double Largest(FusePlan plan) => plan.Ways.Where(w => !w.IsMain).Max(w => w.Fuse.Rating.Amperes);

    // Wires of no stated kind are planned as ordinary cable, of which no rating is higher; old inch sizes have a rating
    // of their own, lower still.
    private static Bike AsOrdinary(Bike bike) =>
        bike with
        {
            Runs = [.. bike.Runs.Select(r => IsUnstated(r, bike) ? r with { Cable = CableKind.Ordinary } : r)],
        };

    private static bool IsUnstated(Run run, Bike bike) =>
        (run.Cable ?? bike.Cable) is null && run.Wire.Construction != WireConstruction.InchStrands;

    // The branches, then each time the largest that branches again at one point parted there.
    private IEnumerable<ImmutableArray<FeedBranch>> Partings(ImmutableArray<FeedBranch> branches)
    {
        yield return branches;
        while (branches.Length < MostOfChoice)
        {
            (FeedBranch Branch, ImmutableArray<FeedBranch> Parts)[] open =
            [
                .. branches
                    .OrderByDescending(b => Dealt(b).Peak.Max())
                    .Select(b => (Branch: b, Parts: _feed.Parted(b)))
                    .Where(b => b.Parts is { } parts && parts.All(p => p.Source == parts[0].Source))
                    .Select(b => (b.Branch, b.Parts!.Value)),
            ];
            if (open is not [var largest, ..])
                yield break;
            branches = [.. branches.Where(b => b != largest.Branch), .. largest.Parts];
            if (branches.Length <= FuseDealer.MostBranches)
                yield return branches;
        }
    }

    // Raises a fuse that the solved bike with the box overloads, mostly by its inrush, until all suit; then one that
    // the inrush of lamps often switched would age, as far as no wire need be larger for it and no fuse the largest.
    private FusePlan Fitted(ImmutableArray<ImmutableArray<FeedBranch>> groups, double[] ratings)
    {
        double leastMain = 0;
        FusePlan? suits = null;
        for (int trial = 0; trial < MostTrials; trial++)
        {
            if (FusePlanner.RatingFrom(Math.Max(leastMain, FusePlanner.LeastMain(ratings.Max()))) is not { } main)
                return FusePlanner.Failed(
                    $"no blade fuse is large enough for the main fuse: it must be at least "
                        + $"{FusePlanner.A(FusePlanner.LeastMain(ratings.Max()))}, or its way does not open first"
                );
            FuseBox.Built built = FuseBox.Fit(_bike, groups, [.. ratings], (_main, main), _options.BoxLead);
            WireSizingResult sizes = Sized(built.Bike);
            if (sizes.Sized is not { } planned)
                return suits ?? FusePlanner.Failed(sizes.Explanation);
            ImmutableArray<FuseSuitability> fuses = FuseCheck.Evaluate(
                planned,
                BikeSolution.Solve(planned, _options.Check, _cancellation).FusePoints,
                _options.Check.Fuses,
                _cancellation
            );
            int first = planned.Fuses.Length - ratings.Length;
            bool raised = false;
            for (int i = 0; i < fuses.Length; i++)
            {
                if (fuses[i].Verdict is FuseVerdict.Suits or FuseVerdict.NotJudged)
                    continue;
                if (suits is not null)
                    return suits;
                if (i < first && fuses[i].Fuse.Name != _main)
                    return FusePlanner.Failed(
                        $"a fuse outside the plan, on a wire of its own, comes first: {fuses[i].Headline}"
                    );
                if (
                    fuses[i].Verdict != FuseVerdict.Overloaded
                    || FusePlanner.NextRating(fuses[i].Fuse.Rating.Amperes) is not { } next
                )
                    return FusePlanner.Failed(fuses[i].Headline);
                raised = true;
                if (i < first)
                    leastMain = next;
                else
                    ratings[i - first] = next;
            }

            if (raised)
                continue;
            suits = Report(groups, built, planned, fuses, first, sizes.Unmet);
            for (int i = first; i < fuses.Length; i++)
                if (
                    fuses[i].Findings.Any(f => f.Kind == FindingKind.FuseAgesByInrush)
                    && FusePlanner.NextRating(ratings[i - first]) is { } larger
                    && larger <= ratings.Max() + 1e-9
                    && fuses[i].Advice.MaximumRatingForWire?.Amperes >= larger - 1e-9
                )
                    (ratings[i - first], raised) = (larger, true);
            if (!raised)
                return suits;
        }

        return suits ?? FusePlanner.Failed("no ratings were found that carry the load and its inrush");
    }

    private FusePlan Report(
        ImmutableArray<ImmutableArray<FeedBranch>> groups,
        FuseBox.Built built,
        Bike planned,
        ImmutableArray<FuseSuitability> fuses,
        int first,
        ImmutableArray<Finding> unmet
    )
    {
        ImmutableArray<FuseWay> ways =
        [
            .. fuses
                .Select((fuse, i) => (Fuse: fuse, Index: i))
                .Where(f => f.Index >= first || f.Fuse.Fuse.Name == _main)
                .Select(f =>
                    Way(f.Fuse, f.Index < first, f.Index < first ? groups.SelectMany(g => g) : groups[f.Index - first])
                ),
        ];
        Bike stated = Stated(planned);
        return new FusePlan
        {
            Ways = ways,
            RemovedFuses = [.. _given.Fuses.Where(f => stated.Fuses.All(p => p.Name != f.Name))],
            Findings = [.. Assumed(), .. unmet],
            TappingPoints = built.Taps,
            NewRuns = [.. stated.Runs.Where(r => built.NewRuns.Any(n => n.Name == r.Name))],
            ResizedRuns =
            [
                .. stated
                    .Runs.Zip(_bike.Runs)
                    .Where(r => r.Second.WireIsOpen || r.First.Wire != r.Second.Wire)
                    .Select(r => r.First),
            ],
            MovedEnds = FuseBox.MovedEnds(_given, stated),
            Planned = stated,
            Explanation = FusePlanner.Explain(ways),
        };
    }

    private IEnumerable<Finding> Assumed()
    {
        string[] unstated = [.. _given.Runs.Where(r => IsUnstated(r, _given)).Select(r => r.Name)];
        if (unstated.Length > 0)
            yield return new Finding(FindingKind.PlannedAsOrdinaryCable, Severity.Caution, "cable")
            {
                Parts = unstated.Length == _given.Runs.Length ? [] : [.. unstated],
            };
    }

    // The kind of cable is stated of wires that the plan adds or replaces; the others keep what their lists say.
    private Bike Stated(Bike planned) =>
        planned with
        {
            Runs =
            [
                .. planned.Runs.Select((r, i) =>
                    i >= _given.Runs.Length ? r with { Cable = _given.Cable is null ? r.Cable : null }
                    : _given.Runs[i].WireIsOpen || r.Wire != _given.Runs[i].Wire
                        ? r with { Cable = _given.Runs[i].Cable ?? (_given.Cable is null ? CableKind.Ordinary : null) }
                    : r with { Cable = _given.Runs[i].Cable }
                ),
            ],
        };

    private FuseWay Way(FuseSuitability fuse, bool isMain, IEnumerable<FeedBranch> branches)
    {
        int[] lamps = [.. branches.SelectMany(b => b.Lamps).Order()];
        return new FuseWay
        {
            Fuse = fuse.Fuse,
            IsMain = isMain,
            IsInLine = !isMain && branches.All(b => Name.Equal(fuse.Fuse.From!, _graph.Points[b.Source])),
            Colour = FusePlanner.ColourOf(fuse.Fuse.Rating),
            Circuits = Loads.Circuits(lamps),
            Lamps = [.. lamps.Select(l => _given.Lamps[l].Lamp)],
            ContinuousCurrent = fuse.Steady.ContinuousCurrent,
            PeakCurrent = fuse.Steady.WorstCurrent,
            SmallestWire = fuse
                .Protection.DownstreamRuns.Concat(fuse.Protection.ReturnRuns)
                .MinBy(r => r.Run.Wire.CopperArea.SquareMillimeters)
                ?.Run.Wire,
        };
    }

    // The new wires and those that are rated below their fuse; where a limit of drop is not kept so, all, if that keeps
    // more. Above 4 mm² only where no other limit can be kept.
    private WireSizingResult Sized(Bike bike)
    {
        Bike below = BelowFuse(bike),
            all = bike with { Runs = [.. bike.Runs.Select(r => r with { WireIsOpen = true })] };
        var few = new WireSizingOptions { LargestArea = s_largestWire, Family = FamilyOf(_given) };
        WireSizingResult first = Size(below, few);
        if (first is { IsFeasible: true, Unmet.IsEmpty: true })
            return first;
        WireSizingResult second = Size(all, few);
        if (second.IsFeasible && (!first.IsFeasible || second.UnmetLamps.Length < first.UnmetLamps.Length))
            return second;
        foreach (double? larger in new double?[] { 6, 10, null })
            if (!first.IsFeasible)
                first = Size(
                    below,
                    few with
                    {
                        LargestArea = larger is { } most ? Area.FromSquareMillimeters(most) : null,
                    }
                );
        return first;
    }

    private static WireConstruction? FamilyOf(Bike bike) =>
        bike
            .Runs.Where(r => !r.WireIsOpen)
            .GroupBy(r => SizingProblem.FamilyOf(r.Wire.Construction))
            .OrderByDescending(g => g.Count())
            .Select(g => (WireConstruction?)g.Key)
            .FirstOrDefault();

    private WireSizingResult Size(Bike bike, WireSizingOptions options) =>
        HarnessSizing.Size(new HarnessNetwork(bike), OfPlan(options), _cancellation);

    // The same settings, engine, supply and fuses as the plan.
    private WireSizingOptions OfPlan(WireSizingOptions options) =>
        options with
        {
            Check = _options.Check,
        };

    private Bike BelowFuse(Bike bike)
    {
        var problem = new SizingProblem(new HarnessNetwork(bike), OfPlan(new WireSizingOptions()), _cancellation);
        return bike with
        {
            Runs =
            [
                .. bike.Runs.Select(
                    (r, i) =>
                        problem.Kept[i] >= 0 && !problem.MeetsFuse(i, problem.Kept[i])
                            ? r with
                            {
                                WireIsOpen = true,
                            }
                            : r
                ),
            ],
        };
    }

    // Branches are parted where they must be, as far as they can.
    private ImmutableArray<FeedBranch> Parted(ImmutableArray<FeedBranch> branches)
    {
        double largest = CurrentRating
            .Calculate(
                WireTable.Of(WireConstruction.MetricCable).Last(w => w.CopperArea <= s_largestWire),
                _options.Check.Fuses.AirRoundWires(_bike),
                1,
                _bike.Cable ?? CableKind.Ordinary
            )
            .Current!.Value.Amperes;
        var done = new List<FeedBranch>();
        var open = new Queue<FeedBranch>(branches);
        while (open.TryDequeue(out FeedBranch? branch))
        {
            DealtBranch dealt = Dealt(branch);
            bool mustPart =
                done.Count + open.Count == 0
                || dealt.Kinds.HasFlag(ApartLoads.Headlamp | ApartLoads.Ignition)
                || _options.ApartDipAndMain && dealt.Kinds.HasFlag(ApartLoads.Dip | ApartLoads.Main)
                || dealt.Peak.Max() > largest
                || dealt.Continuous.Max() > largest * _options.Check.Fuses.ContinuousLoadFactor.DecimalFractions;
            if (mustPart && _feed.Parted(branch) is { } parts)
                foreach (FeedBranch part in parts)
                    open.Enqueue(part);
            else
                done.Add(branch);
        }

        return [.. done];
    }

    // More branches than are dealt: the smallest two of one source become one.
    private ImmutableArray<FeedBranch> Joined(ImmutableArray<FeedBranch> branches)
    {
        while (
            branches.Length > FuseDealer.MostBranches
            && branches
                .GroupBy(b => b.Source)
                .Where(g => g.Count() > 1)
                .SelectMany(g => g)
                .OrderBy(b => Dealt(b).Peak.Max())
                .ToArray()
                is [var one, ..] small
        )
        {
            FeedBranch other = small.First(b => b != one && b.Source == one.Source);
            branches =
            [
                .. branches.Where(b => b != one && b != other),
                new FeedBranch(
                    one.Source,
                    [.. one.Heads, .. other.Heads],
                    one.Points.Union(other.Points),
                    [.. one.Lamps, .. other.Lamps]
                ),
            ];
        }

        return branches;
    }

    private DealtBranch Dealt(FeedBranch branch)
    {
        double least = _graph
            .Runs.Where(r => branch.Points.Contains(r.A) || branch.Points.Contains(r.B))
            .Select(r => RatedFor(_bike.Runs[r.Index]))
            .DefaultIfEmpty(BranchLoads.UnknownWireAmperes)
            .Min();
        return Loads.Of(branch.Source, branch.Lamps, least);
    }

    private double RatedFor(Run run) =>
        run.WireIsOpen
            ? BranchLoads.UnknownWireAmperes
            : run.RatingOf(run.Wire, _options.Check.Fuses.AirRoundWires(_bike), run.Cable ?? _bike.Cable)
                .Current?.Amperes
                ?? 0;
}
