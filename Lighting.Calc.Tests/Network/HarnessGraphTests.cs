namespace Lighting.Calc.Tests.Network;

/// <summary>Ways through a small square of parts with a diagonal.</summary>
public class HarnessGraphTests
{
    // a – b – d by cheap parts, a – c – d by dear ones, a – d straight by the dearest; e hangs alone.
    private static readonly HarnessGraph s_square = new(
        new Bike { Runs = [Run("ab"), Run("db"), Run("ac"), Run("cd"), Run("ad"), Run("ef")] }
    );

    private static readonly Dictionary<string, double> s_costs = new()
    {
        ["ab"] = 1,
        ["db"] = 4,
        ["ac"] = 3,
        ["cd"] = 3,
        ["ad"] = 10,
        ["ef"] = 1,
    };

    [Fact]
    public void The_cheapest_way_costs_least_in_all()
    {
        Reached ways = s_square.From(s_square.NumberOf("a"), p => s_costs[p.Name]);
        Assert.Equal(["ab", "db"], ways.PathTo(s_square.NumberOf("D")).Select(p => p.Name));
        Assert.Equal(5, ways.CostTo(s_square.NumberOf("d")));
        Assert.Equal(
            "a > ab > b > db > d",
            s_square.Described(s_square.NumberOf("a"), ways.PathTo(s_square.NumberOf("d")))
        );
        Assert.Equal(s_square.NumberOf("d"), ways.FarEndOf(s_square.Runs[1]));
    }

    // The dearest part of a – c – d costs 3, that of a – b – d 4.
    [Fact]
    public void The_widest_way_has_the_least_dear_part_of_all() =>
        Assert.Equal(["ac", "cd"], Way("a", "d", n => s_costs[n], widest: true));

    [Fact]
    public void A_closed_part_is_gone_round() =>
        Assert.Equal(["ad"], Way("a", "d", n => n is "db" or "ac" ? HarnessGraph.NoWay : s_costs[n]));

    [Fact]
    public void Of_equal_costs_the_way_of_fewer_parts_is_taken()
    {
        Assert.Equal(["ad"], Way("a", "d", _ => 0));
        Assert.Equal(["ad"], Way("a", "d", _ => 7, widest: true));
        Assert.Equal(["ad"], Way("d", "a", n => n == "ad" ? 5 : s_costs[n]));
    }

    // Of two ways of the same cost and length that over the part listed first.
    [Fact]
    public void Of_equal_ways_the_first_is_taken() =>
        Assert.Equal(["ab", "db"], Way("a", "d", n => n == "ad" ? HarnessGraph.NoWay : 1));

    [Fact]
    public void Where_there_is_no_way_there_is_none_and_from_a_point_to_itself_no_part()
    {
        Reached all = s_square.From(s_square.NumberOf("a"), _ => 1),
            none = s_square.From(s_square.NumberOf("a"), _ => HarnessGraph.NoWay);
        Assert.False(all.Reaches(s_square.NumberOf("e")));
        Assert.False(all.Meets(s_square.Runs[5]));
        Assert.Empty(all.PathTo(s_square.NumberOf("e")));
        Assert.False(none.Reaches(s_square.NumberOf("d")));
        Assert.True(none.Reaches(s_square.NumberOf("A")));
        Assert.True(none.Meets(s_square.Runs[0]));
        Assert.False(none.Reaches(s_square.Runs[0]));
        Assert.Empty(none.PathTo(s_square.NumberOf("a")));
        Assert.Equal(-1, s_square.NumberOf("nowhere"));
    }

    [Fact]
    public void A_way_leads_on_from_the_battery_only_where_it_may()
    {
        var graph = new HarnessGraph(
            new Bike
            {
                Runs =
                [
                    Benches.Run("first", "a", Bike.BatteryMinus, 1),
                    Benches.Run("second", Bike.BatteryMinus, "b", 1),
                ],
            }
        );
        int a = graph.NumberOf("a"),
            b = graph.NumberOf("b");
        Assert.True(graph.From(a, _ => 1).Reaches(b));
        Assert.False(graph.From(a, _ => 1, pastBattery: false).Reaches(b));
        Assert.True(graph.From(a, _ => 1, pastBattery: false).Reaches(HarnessGraph.Minus));
        Assert.True(graph.From(HarnessGraph.Minus, _ => 1, pastBattery: false).Reaches(b));
    }

    [Fact]
    public void A_part_of_a_bike_with_runs_has_two_points_and_one_without_is_straight_on_the_battery()
    {
        Bike bike = Benches.Sidecar();
        Bike noPoint = bike with { Lamps = bike.Lamps.SetItem(1, bike.Lamps[1] with { Return = null }) };
        Assert.StartsWith(
            "'high beam' must name its points",
            Assert.Throws<ArgumentException>("bike", () => new HarnessGraph(noPoint)).Message,
            StringComparison.Ordinal
        );
        var straight = new HarnessGraph(
            noPoint with
            {
                Runs = [],
                Fuses = [bike.Fuses[0] with { From = null, To = null }],
            }
        );
        Assert.Empty(straight.Contacts);
        Assert.Equal(
            "battery + > main > main fuse out > tail > battery -",
            straight.Described(straight.Live, [straight.Fuses[0], straight.Lamps[2]])
        );
    }

    [Fact]
    public void Points_are_joined_by_what_is_always_there_and_by_closed_contacts()
    {
        var graph = new HarnessGraph(Benches.Sidecar());
        var joined = new ConnectedNodes(graph);
        bool Are(string a, string b) => joined.Are(graph.NumberOf(a), graph.NumberOf(b));
        joined.Join(ContactSet.Where(3, i => i == 0));
        Assert.True(Are(Bike.BatteryPlus, "LOW FEED"));
        Assert.False(Are(Bike.BatteryPlus, "high feed"));
        Assert.True(Are("head earth", Bike.BatteryMinus));
        Assert.False(Are(Bike.BatteryPlus, Bike.BatteryMinus));
        joined.Join(ContactSet.Where(3, i => i == 1));
        Assert.False(Are(Bike.BatteryPlus, "low feed"));
        Assert.True(Are(Bike.BatteryPlus, "high feed"));
        joined.Join(ContactSet.Where(3, _ => true));
        Assert.True(Are("tail feed", "low feed"));
        joined = new ConnectedNodes(graph, fuses: false);
        joined.Join(ContactSet.Where(3, i => i == 0));
        Assert.False(Are(Bike.BatteryPlus, "low feed"));
    }

    private static IEnumerable<string> Way(string from, string to, Func<string, double> cost, bool widest = false) =>
        s_square
            .From(s_square.NumberOf(from), p => cost(p.Name), widest)
            .PathTo(s_square.NumberOf(to))
            .Select(p => p.Name);

    private static Run Run(string ends) => Benches.Run(ends, ends[..1], ends[1..], 1);
}
