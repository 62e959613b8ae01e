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
    [InlineData("valley-twin", 6, true)]
    public void A_demo_bike_with_its_plan_suits(string name, int? ways, bool apart = false) =>
        Suits(DemoBikeTests.Read(name), ways, apart);

    [Theory]
    [InlineData("builder", 4)]
    [InlineData("commuter", 3)]
    public void A_foreign_bike_with_its_plan_suits(string name, int? ways) => SuitsForeign(name, ways);

    [Theory]
    [Trait("time", "long")]
    [InlineData("builder", 2)]
    [InlineData("builder", null)]
    [InlineData("commuter", 2)]
    [InlineData("commuter", null)]
    [InlineData("old-twin", 2)]
    [InlineData("old-twin", 4)]
    [InlineData("old-twin", 6, true)]
    [InlineData("three-phase", 3)]
    [InlineData("three-phase", 6)]
    public void Every_foreign_bike_with_any_plan_suits(string name, int? ways, bool apart = false) =>
        SuitsForeign(name, ways, apart);

    [Theory]
    [Trait("time", "long")]
    [InlineData(3, 2)]
    [InlineData(4, 4)]
    [InlineData(5, 6)]
    [InlineData(6, null)]
    public void More_generated_bikes_with_their_plans_suit(int seed, int? ways) =>
        A_generated_bike_with_its_plan_suits(seed, ways);

    [Theory]
    [Trait("time", "long")]
    [InlineData("builder")]
    [InlineData("commuter")]
    [InlineData("old-twin")]
    [InlineData("three-phase")]
    public void More_ways_of_a_foreign_bike_never_need_a_larger_fuse(string name)
    {
        Bike bike = BikeLists.Read($"Lighting.Calc.Tests/ForeignBikes/{name}").Value.Bike;
        double before = double.PositiveInfinity;
        for (int ways = 1; ways <= 6; ways++)
            if (Plan(bike, ways) is { IsFeasible: true } plan)
            {
                Assert.True(Largest(plan) <= before, $"{ways} ways need {Largest(plan)} A, fewer {before} A");
                before = Largest(plan);
            }
            else
                Assert.True(double.IsPositiveInfinity(before), $"{ways} ways have no plan, fewer have one");
    }

    [Fact]
    public void A_new_bike_with_fuses_of_its_own_keeps_them_apart_and_every_end_that_moves_is_named()
    {
        Bike bike = BikeLists
            .Read(
                NewBike
                    .Lists(new NewBikeOptions { HasSeveralFuses = true, HasIndicators = true })
                    .Aggregate(ListSource.Empty, (source, list) => source.With(list.Key, list.Value))
            )
            .Value.Bike;
        FusePlan plan = Plan(bike, 4);
        Assert.Equal(["ignition", "lights", "signals"], plan.RemovedFuses.Select(f => f.Name).Order());
        Assert.True(Largest(plan) <= bike.Fuses.Max(f => f.Rating.Amperes));
        // What the list names moves the given bike to the plan, and nothing else differs.
        foreach (MovedEnd end in plan.MovedEnds)
            Assert.Contains(
                plan.Planned!.Runs.Select(r => (r.Name, r.From, r.To))
                    .Concat(plan.Planned.Lamps.Select(l => (Name: l.Lamp, From: l.Feed!, To: l.Return!)))
                    .Concat(bike.Switches.Zip(plan.Planned.Switches, (was, now) => (was.Name, now.From, now.To)))
                    .Concat(plan.Planned.Fuses.Select(f => (f.Name, From: f.From!, To: f.To!))),
                p => p.Name == end.Part && (p.From == end.To || p.To == end.To)
            );
        Assert.Equal(
            bike.Runs.Zip(plan.Planned!.Runs)
                .Sum(r => (r.First.From != r.Second.From ? 1 : 0) + (r.First.To != r.Second.To ? 1 : 0))
                + bike.Switches.Zip(plan.Planned.Switches)
                    .Sum(r => (r.First.From != r.Second.From ? 1 : 0) + (r.First.To != r.Second.To ? 1 : 0)),
            plan.MovedEnds.Length
        );
        Suits(bike, 4);
    }

    [Fact]
    [Trait("time", "long")]
    public void Branch_fuses_behind_the_ignition_switch_are_not_hung_on_one_large_fuse()
    {
        Bike bike = BikeLists.Read("Lighting.Calc.Tests/ForeignBikes/three-phase").Value.Bike;
        Assert.True(Largest(Plan(bike, 6)) <= 10);
    }

    // A relay on a battery lead of its own keeps its fuse; the wires up to the box keep the main fuse.
    [Fact]
    public void With_two_wires_from_the_battery_the_tree_of_the_main_fuse_is_planned_and_nothing_is_left_unfused()
    {
        Bike bike = RelayPlanner
            .Plan(
                DemoBikeTests.Read("valley-twin"),
                "headlamp high",
                cancellationToken: TestContext.Current.CancellationToken
            )
            .Planned!;
        FusePlan plan = Plan(bike, 3);
        Assert.True(plan.IsFeasible, plan.Explanation);
        Assert.Empty(plan.RemovedFuses);
        Assert.Equal("main", Assert.Single(plan.Ways, w => w.IsMain).Fuse.Name);
        Assert.Contains(plan.Planned!.Fuses, f => f.Name == "headlamp high relay" && f.Rating.Amperes == 7.5);
        Assert.DoesNotContain(plan.Ways, w => w.Lamps.Contains("headlamp high"));
        BikeReport report = BikeCheck.Evaluate(
            plan.Planned,
            cancellationToken: TestContext.Current.CancellationToken
        );
        Assert.DoesNotContain(report.Findings, f => f.Kind is FindingKind.RunUnfused or FindingKind.LampUnfused);
        Assert.All(report.Fuses, f => Assert.True(f.Verdict == FuseVerdict.Suits, f.Headline));
    }

    [Fact]
    public void Contacts_of_one_switch_share_a_way_and_no_box_stands_behind_them()
    {
        FusePlan plan = Plan(BikeLists.Read("Lighting.Calc.Tests/ForeignBikes/builder").Value.Bike, 4);
        Assert.Equal(["i2"], plan.TappingPoints);
        Assert.DoesNotContain(plan.Ways, w => w.IsInLine);
        Assert.Equal(
            ["way 3 out", "way 3 out"],
            plan.MovedEnds.Where(m => m.Part.StartsWith("indicators", StringComparison.Ordinal)).Select(m => m.To)
        );
    }

    [Fact]
    public void A_setting_without_a_solution_is_a_reason_and_no_exception()
    {
        Bike bike = DemoBikeTests.Read("valley-twin");
        bike = bike with
        {
            BatteryResistance = ElectricResistance.Zero,
            Switches =
            [
                .. bike.Switches,
                FuseBike.Contact("jumper", Bike.BatteryPlus, Bike.BatteryMinus, "on"),
            ],
        };
        FusePlan plan = Plan(bike, 3);
        Assert.False(plan.IsFeasible);
        Assert.Contains("a setting cannot be solved", plan.Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void A_limit_of_drop_that_no_wire_keeps_is_named()
    {
        Bike bike = DemoBikeTests.Read("valley-twin") with { AllowedDrop = Ratio.FromPercent(2) };
        FusePlan plan = Plan(bike, 3);
        Assert.True(plan.IsFeasible, plan.Explanation);
        Assert.Contains(
            plan.Findings,
            f => f.Kind == FindingKind.DropLimitNotMet && f.Parts.Prepend(f.Subject).Contains("headlamp high")
        );
        Assert.All(plan.NewRuns, r => Assert.True(r.Wire.CopperArea.SquareMillimeters <= 4));
    }

    // The lead that no fuse protects.
    [Theory]
    [InlineData("valley-twin")]
    [InlineData("chapel-single")]
    public void The_battery_lead_stands_the_main_fuse(string name)
    {
        Bike planned = Plan(DemoBikeTests.Read(name), 3).Planned!;
        Fuse main = planned.Fuses[0];
        Run lead = planned.Runs.Single(r => r.To == main.From || r.From == main.From);
        Assert.True(lead.Wire.CopperArea.SquareMillimeters >= 2);
        Assert.True(
            CurrentRating
                .Calculate(lead.Wire, Temperature.FromDegreesCelsius(30), lead.Bundle, lead.Cable ?? CableKind.Ordinary)
                .Current >= main.Rating
        );
    }

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
        Assert.Equal(["ignition out"], apart.TappingPoints);
        Assert.Contains(apart.Ways, w => w is { IsInLine: true, Fuse.From: "low line" });
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

    private static void SuitsForeign(string name, int? ways, bool apart = false) =>
        Suits(BikeLists.Read($"Lighting.Calc.Tests/ForeignBikes/{name}").Value.Bike, ways, apart);

    // As written and read again: no finding of fuses, wires, shorts, drop or cable that the plan does not state itself.
    private static void Suits(Bike bike, int? ways, bool apart = false)
    {
        FusePlan plan = FusePlanner.Plan(
            bike,
            new FusePlanOptions { Ways = ways, ApartDipAndMain = apart },
            TestContext.Current.CancellationToken
        );
        Assert.True(plan.IsFeasible, plan.Explanation);
        Bike planned = BikeLists
            .Read(
                BikeListsWriter
                    .Write(new BikeLists { Bike = plan.Planned! })
                    .Aggregate(ListSource.Empty, (source, list) => source.With(list.Key, list.Value))
            )
            .Value.Bike;
        BikeReport report = BikeCheck.Evaluate(planned, cancellationToken: TestContext.Current.CancellationToken);
        Assert.All(
            report.Fuses,
            f => Assert.True(f.Verdict is FuseVerdict.Suits or FuseVerdict.NotJudged, f.Headline)
        );
        Assert.All(
            report.Fuses,
            f => Assert.All(f.Protection.DownstreamRuns, r => Assert.True(r.Rating.Alone >= f.Fuse.Rating))
        );
        Assert.DoesNotContain(
            report.Findings,
            f =>
                f.Kind
                    is FindingKind.LampUnfused
                        or FindingKind.RunUnfused
                        or FindingKind.RunOverloaded
                        or FindingKind.RunFedByTwoFuses
                        or FindingKind.WiresRatedBelowFuse
                        or FindingKind.WiresUnratedBehindFuse
                        or FindingKind.CableKindNeeded
                        or FindingKind.BundledWiresBelowFuse
                        or FindingKind.FuseBypassed
                        or FindingKind.ShortDoesNotClear
                        or FindingKind.ShortNotShownToClear
                || f.Kind == FindingKind.VoltageDropTooLarge
                    && f.Severity == Severity.Fault
                    && plan.Findings.All(p => p.Kind != FindingKind.DropLimitNotMet || p.Subject != f.Subject)
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
