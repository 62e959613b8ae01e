using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Deals the branches of a bike with runs, puts the box into it and sizes its wires.</summary>
internal sealed class HarnessFusePlanner
{
    private const int MostTrials = 12;

    // Wire above this is parted rather than made larger: what the terminals of older machines take (common practice, no
    // source).
    private static readonly Area s_largestWire = Area.FromSquareMillimeters(4);

    private readonly Bike _given;
    private readonly Bike _bike;
    private readonly FusePlanOptions _options;
    private readonly CancellationToken _cancellation;
    private readonly HarnessGraph _graph;
    private readonly FeedBranches _feed;
    private readonly BranchLoads _loads;

    public HarnessFusePlanner(Bike bike, FusePlanOptions options, CancellationToken cancellationToken)
    {
        (_given, _bike) = (bike, FuseBox.WithMainAlone(bike));
        (_options, _cancellation) = (options, cancellationToken);
        _graph = new HarnessGraph(_bike);
        _feed = new FeedBranches(_bike, _graph);
        _loads = new BranchLoads(_bike, options, cancellationToken);
    }

    public FusePlan Plan()
    {
        ImmutableArray<int> fed = _feed.Fed();
        if (fed.IsEmpty)
            return FusePlanner.Failed("the battery feeds no lamp or other load");
        ImmutableArray<FeedBranch> branches = Joined(Parted(_feed.At(_feed.Tap(_graph.Live, fed), fed)));
        FuseDealer dealer = FusePlanner.Dealer([.. branches.Select(Dealt)], _options, _bike);
        return FusePlanner.Deal(dealer, branches.Length, _options.Ways) is { } deal
            ? Fitted([.. deal.Groups.Select(g => g.Select(b => branches[b]).ToImmutableArray())], [.. deal.Ratings])
            : FusePlanner.Failed(FusePlanner.TooFew(dealer, branches.Length));
    }

    // Raises a fuse that the solved bike with the box overloads, mostly by its inrush, until all suit.
    private FusePlan Fitted(ImmutableArray<ImmutableArray<FeedBranch>> groups, double[] ratings)
    {
        double leastMain = 0;
        for (int trial = 0; trial < MostTrials; trial++)
        {
            if (FusePlanner.RatingFrom(Math.Max(leastMain, FusePlanner.LeastMain(ratings.Max()))) is not { } main)
                return FusePlanner.Failed(
                    $"no blade fuse is large enough for the main fuse: it must be at least "
                        + $"{FusePlanner.A(FusePlanner.LeastMain(ratings.Max()))}, or its way does not open first"
                );
            FuseBox.Built built = FuseBox.Fit(_bike, groups, [.. ratings], main, _options.BoxLead);
            WireSizingResult sizes = Sized(built.Bike);
            if (sizes.Sized is not { } planned)
                return FusePlanner.Failed(sizes.Explanation);
            ImmutableArray<FuseSuitability> fuses = FuseCheck.Evaluate(
                planned,
                BikeSolution.Solve(planned, _options.Check, _cancellation).Points,
                _options.Fuses,
                _cancellation
            );
            int first = planned.Fuses.Length - ratings.Length;
            bool raised = false;
            for (int i = 0; i < fuses.Length; i++)
            {
                if (fuses[i].Verdict is FuseVerdict.Suits or FuseVerdict.NotJudged)
                    continue;
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

            if (!raised)
                return Report(groups, built, planned, fuses, first);
        }

        return FusePlanner.Failed("no ratings were found that carry the load and its inrush");
    }

    private FusePlan Report(
        ImmutableArray<ImmutableArray<FeedBranch>> groups,
        FuseBox.Built built,
        Bike planned,
        ImmutableArray<FuseSuitability> fuses,
        int first
    )
    {
        ImmutableArray<FuseWay> ways =
        [
            .. fuses.Select((f, i) => Way(f, i < first, i < first ? groups.SelectMany(g => g) : groups[i - first])),
        ];
        return new FusePlan
        {
            Ways = ways,
            TappingPoints = built.Taps,
            NewRuns = [.. planned.Runs.Where(r => built.NewRuns.Any(n => n.Name == r.Name))],
            ResizedRuns =
            [
                .. planned
                    .Runs.Zip(_bike.Runs)
                    .Where(r => r.Second.WireIsOpen || r.First.Wire != r.Second.Wire)
                    .Select(r => r.First),
            ],
            MovedEnds = built.Moved,
            Planned = planned,
            Explanation = FusePlanner.Explain(ways),
        };
    }

    private FuseWay Way(FuseSuitability fuse, bool isMain, IEnumerable<FeedBranch> branches)
    {
        int[] lamps = [.. branches.SelectMany(b => b.Lamps).Order()];
        return new FuseWay
        {
            Fuse = fuse.Fuse,
            IsMain = isMain,
            Colour = FusePlanner.ColourOf(fuse.Fuse.Rating),
            Circuits = _loads.Circuits(lamps),
            Lamps = [.. lamps.Select(l => _given.Lamps[l].Lamp)],
            ContinuousCurrent = fuse.Steady.ContinuousCurrent,
            PeakCurrent = fuse.Steady.WorstCurrent,
            SmallestWire = fuse
                .Protection.DownstreamRuns.Concat(fuse.Protection.ReturnRuns)
                .MinBy(r => r.Run.Wire.CopperArea.SquareMillimeters)
                ?.Run.Wire,
        };
    }

    // First the new wires and those that are rated below their fuse; then all, where the drop asks for more; then
    // without a limit of drop, which the bike did not keep before.
    private WireSizingResult Sized(Bike bike)
    {
        WireSizingResult result = Size(BelowFuse(bike), new WireSizingOptions());
        if (!result.IsFeasible)
            result = Size(
                bike with
                {
                    Runs = [.. bike.Runs.Select(r => r with { WireIsOpen = true })],
                },
                new WireSizingOptions { Family = FamilyOf(_given) }
            );
        return result.IsFeasible
            ? result
            : Size(BelowFuse(bike), new WireSizingOptions { AllowedDrop = Ratio.FromPercent(99) });
    }

    private static WireConstruction? FamilyOf(Bike bike) =>
        bike
            .Runs.Where(r => !r.WireIsOpen)
            .GroupBy(r => r.Wire.Construction)
            .OrderByDescending(g => g.Count())
            .Select(g => (WireConstruction?)g.Key)
            .FirstOrDefault();

    private WireSizingResult Size(Bike bike, WireSizingOptions options) =>
        HarnessSizing.Size(new HarnessNetwork(bike), OfPlan(options), _cancellation);

    // The same settings, engine, supply and fuses as the plan.
    private WireSizingOptions OfPlan(WireSizingOptions options) =>
        options with
        {
            When = _options.When,
            Engine = _options.Engine,
            Supply = _options.Supply,
            Fuses = _options.Fuses,
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
                _options.Fuses.AirRoundWires(_bike),
                1,
                _bike.Cable
            )
            .Current!.Value.Amperes;
        var done = new List<FeedBranch>();
        var open = new Queue<FeedBranch>(branches);
        while (open.TryDequeue(out FeedBranch? branch))
        {
            DealtBranch dealt = Dealt(branch);
            bool mustPart =
                branches.Length == 1
                || dealt.Kinds.HasFlag(ApartLoads.Headlamp | ApartLoads.Ignition)
                || _options.ApartDipAndMain && dealt.Kinds.HasFlag(ApartLoads.Dip | ApartLoads.Main)
                || dealt.Peak.Max() > largest
                || dealt.Continuous.Max() > largest * _options.Fuses.ContinuousLoadFactor.DecimalFractions;
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
        return _loads.Of(branch.Heads[0].Name, branch.Source, branch.Lamps, least);
    }

    private double RatedFor(Run run) =>
        run.WireIsOpen
            ? BranchLoads.UnknownWireAmperes
            : run.RatingOf(run.Wire, _options.Fuses.AirRoundWires(_bike), run.Cable ?? _bike.Cable)
                .Current?.Amperes
                ?? 0;
}
