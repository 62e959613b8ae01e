using System.Collections.Immutable;
using System.Globalization;
using UnitsNet;

namespace Lighting.Calc.Tests.WireSizing;

public sealed class DemoBikeTests
{
    [Theory]
    [InlineData("valley-twin", 5.0)]
    [InlineData("valley-twin", 7.0)]
    [InlineData("chapel-single", 14.0)]
    public void The_chosen_wires_hold_every_limit(string name, double allowedPercent)
    {
        Bike bike = Read(name) with { AllowedDrop = Ratio.FromPercent(allowedPercent) };
        WireSizingResult result = Size(bike);
        Assert.True(result.IsFeasible, result.Explanation);
        BikeReport report = BikeCheck.Evaluate(
            result.Sized!,
            cancellationToken: TestContext.Current.CancellationToken
        );
        Assert.All(report.WorstDrops, d =>
            Assert.True(
                !(d.Lamp.Drop?.Percent > allowedPercent + 1e-6),
                $"{d.Lamp.Lamp.Lamp} in '{d.Setting}' loses {d.Lamp.Drop}"
            )
        );
        Assert.All(report.Settings, point =>
            Assert.All(point.Runs.Zip(result.Runs), r =>
                Assert.True(Math.Abs(r.First.Current.Amperes) <= r.Second.Rating.Current!.Value.Amperes)
            )
        );

        Assert.All(result.Runs.Where(r => r.Fuse is not null), r =>
            Assert.True(r.Rating.Current!.Value >= r.Fuse!.Rating)
        );
        Assert.DoesNotContain(result.Runs, r => r.Limit == SizingConstraint.None);
    }

    // At the charging voltage behind the battery's resistance: the least copper in cm³ that a branch and bound search
    // proved for feeds held to the fuse, without a smallest size, with every setting judged: a lower bound of what
    // returns held to it and 0.5 mm² ask for. So no switch is momentary here.
    [Theory]
    [InlineData("valley-twin", WireConstruction.SolidGauge, 16.30848562539394)]
    [InlineData("valley-twin", WireConstruction.StrandedGauge, 16.443982376747005)]
    [InlineData("valley-twin", WireConstruction.MetricCable, 14.34)]
    [InlineData("chapel-single", WireConstruction.SolidGauge, 21.184223204369215)]
    [InlineData("chapel-single", WireConstruction.StrandedGauge, 21.769639904437653)]
    [InlineData("chapel-single", WireConstruction.MetricCable, 22.025)]
    public void The_choice_needs_little_more_than_the_least_copper(
        string name,
        WireConstruction family,
        double least
    ) =>
        Assert.InRange(
            Size(
                WithoutMomentarySwitches(Read(name)),
                BehindTheBattery(Read(name)) with
                {
                    Family = family,
                    MostSizes = 20,
                }
            ).CopperChosen!.Value.CubicCentimeters,
            least * (1 - 1e-9),
            least * 1.03
        );

    [Fact]
    public void On_the_twin_the_main_feed_is_limited_by_drop_and_the_small_branches_by_the_fuse()
    {
        WireSizingResult result = Size(WithoutMomentarySwitches(Read("valley-twin")));
        RunSizing feed = result.Runs.Single(r => r.Run.Name == "main feed"),
            tail = result.Runs.Single(r => r.Run.Name == "tail wire");
        Assert.Equal((SizingConstraint.Drop, "headlamp high"), (feed.Limit, feed.LimitingLamp!.Lamp));
        Assert.Equal((SizingConstraint.Fuse, "main"), (tail.Limit, tail.Fuse!.Name));
        Assert.True(result.CopperChosen < result.CopperFitted, result.Explanation);
    }

    [Fact]
    public void Fitted_wires_that_are_too_thin_are_found()
    {
        Bike bike = WithoutMomentarySwitches(Read("valley-twin"));
        int feed = bike.Runs.IndexOf(bike.Runs.Single(r => r.Name == "main feed"));
        WireSizingResult good = Size(bike),
            bad = Size(bike with { Runs = bike.Runs.SetItem(feed, bike.Runs[feed] with { Wire = Listed("0.5 mm2") }) });
        Assert.DoesNotContain(good.Findings, f => f.Severity == Severity.Fault);
        Assert.Contains(
            bad.Findings,
            f =>
                f is { Kind: FindingKind.WiresRatedBelowFuse, Severity: Severity.Fault }
                && f.Parts.SequenceEqual(["main feed"])
        );
        Assert.Contains(
            bad.Findings,
            f => f is { Kind: FindingKind.VoltageDropTooLarge, Subject: "headlamp high", Severity: Severity.Fault }
        );
        Assert.Equal(good.CopperChosen, bad.CopperChosen);
    }

    [Fact]
    public void Joints_and_battery_of_the_single_exceed_a_drop_of_4_percent_and_the_rest_is_sized()
    {
        Bike bike = WithoutMomentarySwitches(Read("chapel-single")) with { AllowedDrop = Ratio.FromPercent(4) };
        WireSizingResult result = Size(bike, BehindTheBattery(bike));
        Assert.True(result.IsFeasible, result.Explanation);
        Finding unmet = Assert.Single(result.Unmet, f => f.Subject == "headlamp high");
        Assert.Equal(Severity.Fault, unmet.Severity);
        HarnessSolver thick = new HarnessNetwork(
            bike with
            {
                Runs = [.. bike.Runs.Select(r => r with { Wire = AmericanWireGauge.Stranded(4) })],
            }
        ).CreateSolver();
        OperatingPoint worst = SettingEnumeration
            .Of(bike, Condition.Always)
            .Select(thick.Solve)
            .Where(p => p.Lamps[1].Drop is not null)
            .MaxBy(p => p.Lamps[1].Drop!.Value.Percent)!;
        double rest = VoltageDropAnalysis
            .Breakdown(bike, worst, 1)!
            .Entries.Where(e => e.Kind is not (VoltageDropKind.FeedWire or VoltageDropKind.ReturnWire))
            .Sum(e => e.Share.Percent);
        Assert.True(rest > 4);
        Assert.Equal(
            string.Create(
                CultureInfo.InvariantCulture,
                $"with the largest wire (4 AWG stranded) it drops {worst.Lamps[1].Drop!.Value.Percent:0.##} %, and "
                    + $"joints, switches, fuses and battery alone {rest:0.##} %, which no wire remedies: clean or "
                    + $"renew them, or feed it through a relay near the battery, with a fuse of its own"
            ),
            unmet.Detail
        );
        // Every limit but those that are named.
        Assert.All(
            result.Lamps.Where(l => !result.UnmetLamps.Contains(l.Lamp.Lamp)),
            l => Assert.True(l.DropChosen is null || l.DropChosen <= l.AllowedDrop)
        );
        Assert.Empty(
            BikeCheck
                .Evaluate(result.Sized!, cancellationToken: TestContext.Current.CancellationToken)
                .Findings.Where(f => f.Kind is FindingKind.WiresRatedBelowFuse or FindingKind.ShortDoesNotClear)
        );
    }

    [Theory]
    [InlineData(WireConstruction.SolidGauge)]
    [InlineData(WireConstruction.StrandedGauge)]
    [InlineData(WireConstruction.MetricCable)]
    public void Sizes_come_from_the_family_asked_for(WireConstruction family)
    {
        WireSizingResult result = Size(Read("valley-twin"), new WireSizingOptions { Family = family });
        Assert.True(result.IsFeasible, result.Explanation);
        Assert.All(result.Runs, r => Assert.Equal(family, r.Chosen.Construction));
    }

    [Theory]
    [InlineData("valley-twin", 1)]
    [InlineData("valley-twin", 2)]
    [InlineData("valley-twin", null)]
    [InlineData("chapel-single", 1)]
    [InlineData("chapel-single", null)]
    public void Few_different_sizes_are_chosen_and_fewer_need_more_copper(string name, int? most)
    {
        Bike bike = WithoutMomentarySwitches(Read(name));
        WireSizingResult few = Size(bike, new WireSizingOptions { MostSizes = most }),
            more = Size(bike, new WireSizingOptions { MostSizes = (most ?? 3) + 1 });
        Assert.True(few.IsFeasible, few.Explanation);
        Assert.True(few.Runs.Select(r => r.Chosen).Distinct().Count() <= (most ?? 3));
        Assert.True(few.CopperChosen > more.CopperChosen, $"{few.Explanation} / {more.Explanation}");
    }

    [Fact]
    public void Open_wires_alone_are_chosen_and_the_others_kept()
    {
        Bike bike = Read("valley-twin");
        string[] open = ["tail wire", "main feed"];
        WireSizingResult result = Size(
            bike with
            {
                Runs = [.. bike.Runs.Select(r => r with { WireIsOpen = open.Contains(r.Name) })],
            }
        );
        Assert.Equal(["main feed", "tail wire"], result.Runs.Select(r => r.Run.Name));
        Assert.Null(result.CopperFitted);
        Assert.All(
            result.Sized!.Runs.Zip(bike.Runs).Where(r => !open.Contains(r.First.Name)),
            r => Assert.Equal(r.Second, r.First)
        );
        Assert.DoesNotContain(result.Sized.Runs, r => r.WireIsOpen);
    }

    [Fact]
    public void A_kept_wire_that_is_too_small_is_named()
    {
        Bike bike = Read("valley-twin");
        WireSizingResult result = Size(
            bike with
            {
                Runs =
                [
                    .. bike.Runs.Select(r =>
                        r.Name == "tail wire" ? r with { Wire = Listed("0.5 mm2") } : r with { WireIsOpen = true }
                    ),
                ],
            }
        );
        Assert.False(result.IsFeasible);
        Assert.Contains("'tail wire' (0.5 mm2) is rated", result.Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void Only_the_sizes_in_stock_are_chosen_whatever_their_kind_and_order()
    {
        ImmutableArray<WireSize> stock =
        [
            Listed("4 mm2"),
            AmericanWireGauge.Stranded(16),
            Listed("2 mm2"),
            Listed("4 mm2"),
        ];
        WireSizingResult all = Size(Read("valley-twin")),
            result = Size(
                Read("valley-twin"),
                new WireSizingOptions { Family = WireConstruction.SolidGauge, Stock = stock }
            );
        Assert.Equal(["16 AWG stranded", "2 mm2", "4 mm2"], result.Sizes.Select(s => s.Name));
        Assert.True(result.IsFeasible, result.Explanation);
        Assert.All(result.Runs, r => Assert.Contains(r.Chosen, stock));
        Assert.True(result.CopperChosen > all.CopperChosen);
    }

    [Fact]
    public void A_stock_too_small_for_the_fuse_is_explained_by_its_largest_size()
    {
        WireSizingResult result = Size(
            Read("valley-twin"),
            new WireSizingOptions { Stock = [Listed("0.5 mm2"), Listed("0.75 mm2")] }
        );
        Assert.False(result.IsFeasible);
        Assert.Contains("even with 0.75 mm2 everywhere", result.Explanation, StringComparison.Ordinal);
        Assert.Contains("below its fuse 'main' of 15 A", result.Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void A_least_size_for_strength_is_kept_and_named()
    {
        WireSizingResult result = Size(
            Read("valley-twin"),
            new WireSizingOptions { MinimumArea = Area.FromSquareMillimeters(1.5) }
        );
        Assert.All(result.Runs, r => Assert.True(r.Chosen.CopperArea.SquareMillimeters >= 1.5));
        Assert.Equal(SizingConstraint.Mechanical, result.Runs.Single(r => r.Run.Name == "panel earth").Limit);
    }

    [Fact]
    public void Leaving_the_batterys_own_drop_out_never_needs_more_copper()
    {
        Bike bike = Read("valley-twin");
        WireSizingResult with = Size(bike, BehindTheBattery(bike)),
            without = Size(bike, BehindTheBattery(bike) with { CountBatteryDrop = false });
        Assert.True(without.CopperChosen < with.CopperChosen, $"{without.Explanation} / {with.Explanation}");
    }

    [Fact]
    public void A_bike_without_runs_has_no_wire_to_choose() => Assert.Throws<ArgumentException>(() => Size(new Bike()));

    [Fact]
    public void A_cancelled_search_throws() =>
        Assert.Throws<OperationCanceledException>(() =>
            HarnessSizing.Size(new HarnessNetwork(Read("valley-twin")), null, new CancellationToken(canceled: true))
        );

    internal static WireSizingResult Size(Bike bike, WireSizingOptions? options = null) =>
        HarnessSizing.Size(new HarnessNetwork(bike), options, TestContext.Current.CancellationToken);

    // The drop in every setting is judged, as long as it may last.
    private static Bike WithoutMomentarySwitches(Bike bike) =>
        bike with
        {
            Switches = [.. bike.Switches.Select(s => s with { Momentary = false })],
        };

    // The lamps' current through the battery, as with the engine off.
    private static WireSizingOptions BehindTheBattery(Bike bike) =>
        new() { Check = new CheckOptions { Engine = EngineState.Off, Supply = bike.ChargingVoltage } };

    private static WireSize Listed(string name) =>
        WireTable.TryFind(name, out WireSize? size)
            ? size
            : throw new ArgumentException($"There is no {name}.", nameof(name));

    internal static Bike Read(string name)
    {
        DirectoryInfo? at = new(AppContext.BaseDirectory);
        while (at is not null && !Directory.Exists(Path.Combine(at.FullName, "shared", "bikes", name)))
            at = at.Parent;
        return BikeLists.Read(Path.Combine(at!.FullName, "shared", "bikes", name)).Value.Bike;
    }
}
