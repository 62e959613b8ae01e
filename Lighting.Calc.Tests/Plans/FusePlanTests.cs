using System.Collections.Immutable;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Lighting.Calc.Benchmarks;
using Lighting.Calc.Tests.Fuses;
using Lighting.Calc.Tests.WireSizing;
using UnitsNet;

namespace Lighting.Calc.Tests.Plans;

/// <summary>What a fuse plan promises: <c>check</c> finds the bike suitable that it writes, and no other dealing has a
/// smaller largest fuse.</summary>
public class FusePlanTests
{
    private static readonly double[] s_ratings = [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40];

    [Theory]
    [InlineData("valley-twin", 2)]
    [InlineData("valley-twin", 3)]
    [InlineData("valley-twin", 4)]
    [InlineData("valley-twin", null)]
    [InlineData("chapel-single", 2)]
    [InlineData("chapel-single", 3)]
    [InlineData("chapel-single", null)]
    public void A_demo_bike_with_its_plan_suits(string name, int? ways) => Suits(DemoBikeTests.Read(name), ways);

    [Theory]
    [InlineData(1, 3)]
    [InlineData(2, null)]
    public void A_generated_bike_with_its_plan_suits(int seed, int? ways) =>
        Suits(
            BikeLists
                .Read(
                    new BikeGenerator(seed)
                        .Lists(seed)
                        .Aggregate(ListSource.Empty, (source, list) => source.With(list.Name, list.Text))
                )
                .Value.Bike,
            ways
        );

    [Fact]
    public void More_ways_never_need_a_larger_fuse()
    {
        foreach (string name in new[] { "valley-twin", "chapel-single" })
        {
            double before = double.PositiveInfinity;
            for (int ways = 2; ways <= 5; ways++)
            {
                double largest = Largest(Plan(DemoBikeTests.Read(name), ways));
                Assert.True(largest <= before, $"{name}: {ways} ways need {largest} A, fewer {before} A");
                before = largest;
            }
        }
    }

    // Every partition of the branches by hand: loads of constant current, so that their sums are exact.
    [Property(MaxTest = 60)]
    public Property No_other_dealing_has_a_smaller_largest_fuse() =>
        Prop.ForAll(
            Gen.Choose(1, 1_000_000).ToArbitrary(),
            Gen.Choose(1, 4).ToArbitrary(),
            (seed, ways) =>
            {
                var random = new Random(seed);
                (double Amperes, bool IsMomentary)[] loads =
                [
                    .. Enumerable
                        .Range(0, 2 + random.Next(4))
                        .Select(_ => (Math.Round(0.3 + 6 * random.NextDouble(), 1), random.Next(3) == 0)),
                ];
                double best = Partitions(loads.Length, ways)
                    .Select(p =>
                        p.Max(g =>
                            s_ratings.FirstOrDefault(
                                r =>
                                    g.Sum(l => loads[l].IsMomentary ? 0 : loads[l].Amperes) <= 0.75 * r + 1e-9
                                    && g.Sum(l => loads[l].Amperes) <= r + 1e-9,
                                double.PositiveInfinity
                            )
                        )
                    )
                    .Min();
                FusePlan plan = Plan(Star(loads), ways);
                // Above 25 A a way, or 30 A in all, asks for a main fuse of more than 40 A, which no blade is.
                if (best > 25 || loads.Sum(l => l.Amperes) > 30)
                    return;
                Assert.True(plan.IsFeasible, plan.Explanation);
                Assert.Equal(best, Largest(plan));
                Suits(Star(loads), ways);
            }
        );

    [Fact]
    public void The_headlamp_is_apart_from_the_ignition_and_on_request_dip_from_main()
    {
        Bike twin = DemoBikeTests.Read("valley-twin");
        FusePlan two = Plan(twin, 2),
            apart = FusePlanner.Plan(
                twin,
                new FusePlanOptions { Ways = 6, ApartDipAndMain = true },
                TestContext.Current.CancellationToken
            );
        Assert.DoesNotContain(Ways(two), w => w.Lamps.Contains("ignition coils") && w.Lamps.Contains("headlamp low"));
        Assert.Contains(Ways(two), w => w.Lamps.Contains("headlamp high") && w.Lamps.Contains("headlamp low"));
        Assert.True(apart.IsFeasible, apart.Explanation);
        Assert.DoesNotContain(Ways(apart), w => w.Lamps.Contains("headlamp high") && w.Lamps.Contains("headlamp low"));
        Assert.Equal(["ignition out"], two.TappingPoints);
        Assert.Contains("low line", apart.TappingPoints);
        Assert.Contains(two.MovedEnds, m => m is { Part: "coil wire", From: "ignition out" });
        Assert.Equal(["fuse box feed"], two.NewRuns.Select(r => r.Name));
        Assert.Contains("at least 2 ways", Plan(twin, 1).Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void The_way_opens_before_the_main_fuse()
    {
        FusePlan plan = Plan(DemoBikeTests.Read("valley-twin"), 3);
        FuseWay main = Assert.Single(plan.Ways, w => w.IsMain);
        Assert.All(Ways(plan), w => Assert.True(main.Fuse.Rating.Amperes >= 1.6 * w.Fuse.Rating.Amperes));
        Assert.Equal(["main", "way 1", "way 2", "way 3"], plan.Ways.Select(w => w.Fuse.Name));
        Assert.All(plan.Ways, w => Assert.NotEmpty(w.Colour));
    }

    [Fact]
    public void A_bike_without_a_fuse_gets_a_main_fuse_behind_its_battery_lead_and_one_with_several_gets_new_ones()
    {
        Bike round = Star([(3, false), (4, false), (1, true)]);
        Bike bare = round with
        {
            Fuses = [],
            Runs = [.. round.Runs.Select(r => r.From == "main out" ? r with { From = "main in" } : r)],
        };
        FusePlan none = Plan(bare, 2);
        Assert.Contains(none.Ways, w => w.IsMain);
        Suits(bare, 2);
        FusePlan again = Plan(Plan(round, 3).Planned!, 2);
        Assert.True(again.IsFeasible, again.Explanation);
        Assert.Equal(Largest(Plan(round, 2)), Largest(again));
    }

    [Fact]
    public void Wires_that_lead_from_the_battery_itself_have_ways_and_no_main_fuse()
    {
        Bike bike = Star([(3, false), (4, false)]);
        bike = bike with
        {
            Fuses = [],
            Runs =
            [
                .. bike
                    .Runs.Where(r => r.Name != "battery lead")
                    .Select(r => r.From == "main out" ? r with { From = Bike.BatteryPlus } : r),
            ],
        };
        FusePlan plan = Plan(bike, 2);
        Assert.True(plan.IsFeasible, plan.Explanation);
        Assert.DoesNotContain(plan.Ways, w => w.IsMain);
        Assert.Equal([Bike.BatteryPlus], plan.TappingPoints);
        Suits(bike, 2);
    }

    [Fact]
    public void Circuits_of_a_bulb_list_are_dealt_without_wires()
    {
        Bike bike = BikeLists.Read("shared/bulb-list.csv").Value.Bike;
        FusePlan plan = Plan(bike, 3);
        Assert.True(plan.IsFeasible, plan.Explanation);
        Assert.Null(plan.Planned);
        Assert.Equal(
            ["headlamp", "instruments", "rear lamp"],
            plan.Ways.SelectMany(w => w.Circuits).Order(StringComparer.Ordinal)
        );
        Assert.All(plan.Ways, w => Assert.True(w.ContinuousCurrent.Amperes <= 0.75 * w.Fuse.Rating.Amperes + 1e-9));
        Assert.All(plan.Ways, w => Assert.NotNull(w.SmallestWire));
    }

    [Fact]
    public void A_lighting_coil_has_nothing_to_fuse() =>
        Assert.Contains(
            "nothing to fuse",
            Plan(DemoBikeTests.Read("fell-lightweight"), 2).Explanation,
            StringComparison.Ordinal
        );

    [Fact]
    public void Ways_below_one_are_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Plan(DemoBikeTests.Read("valley-twin"), 0));

    private static FusePlan Plan(Bike bike, int? ways) =>
        FusePlanner.Plan(bike, new FusePlanOptions { Ways = ways }, TestContext.Current.CancellationToken);

    private static IEnumerable<FuseWay> Ways(FusePlan plan) => plan.Ways.Where(w => !w.IsMain);

    private static double Largest(FusePlan plan) => Ways(plan).Max(w => w.Fuse.Rating.Amperes);

    // As written and read again.
    private static void Suits(Bike bike, int? ways)
    {
        FusePlan plan = Plan(bike, ways);
        Assert.True(plan.IsFeasible, plan.Explanation);
        Bike planned = BikeLists
            .Read(
                BikeListsWriter
                    .Write(new BikeLists { Bike = plan.Planned! })
                    .Aggregate(ListSource.Empty, (source, list) => source.With(list.Key, list.Value))
            )
            .Value.Bike;
        BikeReport report = BikeCheck.Evaluate(planned, cancellationToken: TestContext.Current.CancellationToken);
        Assert.All(report.Fuses, f => Assert.True(f.Verdict == FuseVerdict.Suits, f.Headline));
        Assert.All(
            report.Fuses,
            f => Assert.All(f.Protection.DownstreamRuns, r => Assert.True(r.Rating.Alone >= f.Fuse.Rating))
        );
        Assert.DoesNotContain(
            report.Findings,
            f => f.Kind is FindingKind.LampUnfused or FindingKind.RunOverloaded or FindingKind.RunFedByTwoFuses
        );
        Assert.Equal(
            bike.Lamps.Select(l => l.Lamp).Order(StringComparer.Ordinal),
            Ways(plan).SelectMany(w => w.Lamps).Order(StringComparer.Ordinal)
        );
        if (ways is { } most)
            Assert.True(Ways(plan).Count() <= most);
    }

    // A main fuse and a wire to each load; some are switched by a horn button, the others are always on.
    private static Bike Star(IReadOnlyList<(double Amperes, bool IsMomentary)> loads) =>
        new()
        {
            AllowedDrop = Ratio.FromPercent(40),
            Runs =
            [
                FuseBike.Run("battery lead", Bike.BatteryPlus, "main in", "4 mm2", 0.3),
                .. loads.Select((_, i) => FuseBike.Run($"wire {i}", "main out", $"in {i}", "2.5 mm2", 0.5)),
            ],
            Fuses = [FuseBike.Fuse("main", 15, "main in", "main out")],
            Switches =
            [
                .. loads
                    .Index()
                    .Where(l => l.Item.IsMomentary)
                    .Select(l => FuseBike.Contact($"horn {l.Index}", $"back {l.Index}", Bike.BatteryMinus, "pressed")),
            ],
            Lamps =
            [
                .. loads.Select(
                    (l, i) =>
                        FuseBike.Load(
                            $"load {i}",
                            LampType.Fixed,
                            12,
                            l.Amperes,
                            $"in {i}",
                            l.IsMomentary ? $"back {i}" : Bike.BatteryMinus
                        )
                ),
            ],
        };

    private static IEnumerable<ImmutableArray<ImmutableArray<int>>> Partitions(int count, int most)
    {
        if (count == 0)
            return
            [
                [],
            ];
        int last = count - 1;
        return Partitions(last, most)
            .SelectMany(p =>
                Enumerable
                    .Range(0, p.Length)
                    .Select(g => p.SetItem(g, p[g].Add(last)))
                    .Concat(p.Length < most ? [p.Add([last])] : Array.Empty<ImmutableArray<ImmutableArray<int>>>())
            );
    }
}
