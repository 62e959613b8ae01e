using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Lighting.Calc.Tests.WireSizing;
using UnitsNet;

namespace Lighting.Calc.Tests.Loom;

/// <summary>The cut list against the lists that it is made of.</summary>
public class CutListTests
{
    [Theory]
    [InlineData("valley-twin")]
    [InlineData("chapel-single")]
    [InlineData("fell-lightweight")]
    public void Sums_of_a_demo_bike_are_those_of_its_lists(string name) =>
        SumsAreRight(DemoBikeTests.Read(name), new CutListOptions());

    [Property(MaxTest = 50)]
    public Property Sums_of_any_harness_are_those_of_its_lists() =>
        Prop.ForAll(
            Gen.Choose(1, 1_000_000).ToArbitrary(),
            Gen.Choose(0, 40).ToArbitrary(),
            Gen.Choose(0, 20).ToArbitrary(),
            (seed, percent, centimetres) =>
            {
                var random = new Random(seed);
                SumsAreRight(
                    RandomHarness.Make(random, 2 + random.Next(8)),
                    new CutListOptions
                    {
                        Slack = Ratio.FromPercent(percent),
                        SlackLength = Length.FromCentimeters(centimetres),
                        Spare = Ratio.FromPercent(40 - percent),
                    }
                );
            }
        );

    // By hand: 2.5 mm² × 1 m × 8.89 g/cm³ = 22.2 g; the density of copper makes 1 mm² 8.89 g a metre.
    [Fact]
    public void A_metre_of_1_mm2_has_8_89_g_of_copper()
    {
        Bike bike = new()
        {
            Runs =
            [
                Fuses.FuseBike.Run("feed", Bike.BatteryPlus, "lamp", "1 mm2", 1),
                Fuses.FuseBike.Run("earth", "lamp", Bike.BatteryMinus, "2.5 mm2", 1),
            ],
        };
        var list = CutList.Of(bike, new CutListOptions { Slack = Ratio.Zero });
        Assert.Equal(8.89 * 3.5, list.CopperMass.Grams, 9);
    }

    [Fact]
    public void A_wire_is_cut_with_slack_to_the_next_centimetre()
    {
        Bike bike = new() { Runs = [Fuses.FuseBike.Run("feed", Bike.BatteryPlus, "lamp", "1 mm2", 0.512)] };
        Assert.Equal(0.52, Cut(bike, new CutListOptions { Slack = Ratio.Zero }), 9);
        Assert.Equal(0.57, Cut(bike, new CutListOptions()), 9);
        Assert.Equal(
            0.57,
            Cut(bike, new CutListOptions { Slack = Ratio.Zero, SlackLength = Length.FromCentimeters(5) }),
            9
        );

        static double Cut(Bike bike, CutListOptions options) => CutList.Of(bike, options).Wires[0].CutLength.Meters;
    }

    [Fact]
    public void Ends_are_as_listed_or_by_what_is_at_the_point()
    {
        Bike bike = Fuses.FuseBike.Round();
        bike = bike with { Runs = bike.Runs.SetItem(1, bike.Runs[1] with { FromEnd = "ring 5 mm" }) };
        CutWire[] wires = [.. CutList.Of(bike).Wires];
        Assert.Equal(("ring", true, "blade", true), Ends(wires[0])); // battery to fuse
        Assert.Equal(("ring 5 mm", false, "blade", true), Ends(wires[1])); // fuse to switch, listed
        Assert.Equal(("blade", true, "bullet", true), Ends(wires[2])); // switch to lamp
        Assert.Equal(("bullet", true, "ring", true), Ends(wires[3])); // lamp to battery

        static (string, bool, string, bool) Ends(CutWire w) =>
            (w.FromEnd.Terminal, w.FromEnd.IsAssumed, w.ToEnd.Terminal, w.ToEnd.IsAssumed);
    }

    [Fact]
    public void A_point_where_only_wires_meet_is_one_splice()
    {
        Bike bike = new()
        {
            Runs =
            [
                Fuses.FuseBike.Run("a", Bike.BatteryPlus, "middle", "1 mm2", 1),
                Fuses.FuseBike.Run("b", "middle", Bike.BatteryMinus, "2 mm2", 1),
                Fuses.FuseBike.Run("c", "MIDDLE", Bike.BatteryMinus, "1 mm2", 1),
            ],
        };
        TerminalTotal splice = CutList.Of(bike).TerminalTotals.Single(t => t.Terminal == "splice");
        Assert.Equal(("2 mm2", 1), (splice.Wire.Name, splice.Count));
    }

    [Fact]
    public void Labels_are_initials_and_never_the_same_twice()
    {
        string[] names = ["main feed", "Main-Feed", "m f2", "mf", "MF", "灯", "?", "tail"];
        Bike bike = new()
        {
            Runs = [.. names.Select((n, i) => Fuses.FuseBike.Run(n, Bike.BatteryPlus, $"p{i}", "1 mm2", 1))],
        };
        string[] labels = [.. CutList.Of(bike).Wires.Select(w => w.Label)];
        Assert.Equal(("MF", "MF2", "TA"), (labels[0], labels[1], labels[^1]));
        Assert.Equal(labels.Length, labels.Distinct(StringComparer.OrdinalIgnoreCase).Count());
    }

    [Fact]
    public void The_most_particular_price_counts_and_what_has_none_is_named()
    {
        Bike bike = new()
        {
            Runs =
            [
                Fuses.FuseBike.Run("a", Bike.BatteryPlus, "lamp", "1 mm2", 1) with
                {
                    Colour = Colour("RD"),
                },
                Fuses.FuseBike.Run("b", "frame", Bike.BatteryMinus, "2 mm2", 1),
            ],
        };
        var list = CutList.Of(
            bike,
            new CutListOptions
            {
                Slack = Ratio.Zero,
                Prices = [new("1 mm2", 9), new("1 MM2 rd", 2), new("ring", 0.5m), new("ring 2 mm2", 0.75m)],
            }
        );
        Assert.Equal(2.2m, list.WireTotals[0].Cost);
        Assert.Equal((0.5m, 1.5m), (list.TerminalTotals[0].Cost, list.TerminalTotals[1].Cost));
        Assert.Equal(["2 mm2", "splice 1 mm2"], list.Unpriced);
        Assert.Equal(4.2m, list.Cost);
        Assert.Null(CutList.Of(bike).Cost);
        Assert.Empty(CutList.Of(bike).Unpriced);
    }

    [Fact]
    public void A_bike_without_runs_or_with_an_open_wire_has_no_cut_list()
    {
        Assert.Throws<ArgumentException>(() => CutList.Of(new Bike()));
        Bike open = Fuses.FuseBike.Round();
        open = open with { Runs = open.Runs.SetItem(0, open.Runs[0] with { WireIsOpen = true }) };
        Assert.Contains(
            "'battery lead' is not chosen",
            Assert.Throws<ArgumentException>(() => CutList.Of(open)).Message,
            StringComparison.Ordinal
        );
    }

    private static WireColour Colour(string code) =>
        WireColour.TryFind(code, out WireColour? colour) ? colour : throw new ArgumentException(code);

    private static void SumsAreRight(Bike bike, CutListOptions options)
    {
        var list = CutList.Of(bike, options);
        double slack = options.Slack.DecimalFractions,
            each = options.SlackLength.Meters;
        Assert.Equal(bike.Runs.Select(r => r.Name), list.Wires.Select(w => w.Run.Name));
        Assert.Equal(
            bike.Runs.Length,
            list.Wires.Select(w => w.Label).Distinct(StringComparer.OrdinalIgnoreCase).Count()
        );
        Assert.All(
            list.Wires,
            w => Assert.InRange(w.CutLength.Meters - w.Run.Length.Meters * (1 + slack) - each, -1e-6, 0.01)
        );
        Assert.Equal(list.Wires.Sum(w => w.CutLength.Meters), list.WireTotals.Sum(t => t.Cut.Meters), 9);
        Assert.Equal(bike.Runs.Length, list.WireTotals.Sum(t => t.Count));
        Assert.All(
            list.WireTotals,
            t => Assert.InRange(t.ToBuy.Meters - t.Cut.Meters * (1 + options.Spare.DecimalFractions), -1e-6, 0.01)
        );
        Assert.Equal(
            bike.Runs.GroupBy(r => r.Wire)
                .Select(g => (g.Key.Name, Count: g.Count()))
                .OrderBy(g => g.Name, StringComparer.Ordinal),
            list.WireTotals.GroupBy(t => t.Wire)
                .Select(g => (g.Key.Name, Count: g.Sum(t => t.Count)))
                .OrderBy(g => g.Name, StringComparer.Ordinal)
        );
        int splices = list.Wires.SelectMany(w => new[] { w.FromEnd, w.ToEnd }).Count(e => e.Terminal == "splice");
        Assert.Equal(
            2 * bike.Runs.Length - splices,
            list.TerminalTotals.Where(t => t.Terminal != "splice").Sum(t => t.Count)
        );
        Assert.Equal(
            list.Wires.Sum(w => w.Run.Wire.CopperArea.SquareMillimeters * w.CutLength.Meters * 8.89),
            list.CopperMass.Grams,
            6
        );
    }
}
