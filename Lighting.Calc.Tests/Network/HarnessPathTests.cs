using Lighting.Calc.Harness;
using Lighting.Calc.Network;

namespace Lighting.Calc.Tests.Network;

/// <summary>Ways through a small square of parts with a diagonal.</summary>
public class HarnessPathTests
{
    // a – b – d by cheap parts, a – c – d by dear ones, a – d straight by the dearest; e hangs alone.
    private static readonly HarnessLink[] Links =
    [
        Link("a", "b", "ab"), Link("d", "b", "bd"), Link("a", "c", "ac"), Link("c", "d", "cd"), Link("a", "d", "ad"), Link("e", "f", "ef"),
    ];

    private static readonly Dictionary<string, double> Costs = new() { ["ab"] = 1, ["bd"] = 4, ["ac"] = 3, ["cd"] = 3, ["ad"] = 10, ["ef"] = 1 };

    [Fact]
    public void The_cheapest_way_costs_least_in_all()
    {
        IReadOnlyList<HarnessStep> way = HarnessPath.Cheapest(Links, "a", "d", l => Costs[l.Name])!;
        Assert.Equal([("ab", true), ("bd", false)], way.Select(s => (s.Link.Name, s.Forward)));
        Assert.Equal([("a", "b"), ("b", "d")], way.Select(s => (s.Start, s.End)));
    }

    // The dearest part of a – c – d costs 3, that of a – b – d 4.
    [Fact]
    public void The_widest_way_has_the_least_dear_part_of_all() =>
        Assert.Equal(["ac", "cd"], new HarnessPath(Links).Cheapest("A", "D", l => Costs[l.Name], widest: true)!.Select(s => s.Link.Name));

    [Fact]
    public void A_closed_part_is_gone_round() =>
        Assert.Equal(["ad"], new HarnessPath(Links).Cheapest("a", "d", l => l.Name is "bd" or "ac" ? null : Costs[l.Name])!.Select(s => s.Link.Name));

    [Fact]
    public void Of_equal_costs_the_way_of_fewer_parts_is_taken()
    {
        Assert.Equal(["ad"], new HarnessPath(Links).Cheapest("a", "d", _ => 0)!.Select(s => s.Link.Name));
        Assert.Equal(["ad"], new HarnessPath(Links).Cheapest("a", "d", _ => 7, widest: true)!.Select(s => s.Link.Name));
        Assert.Equal(["ad"], new HarnessPath(Links).Cheapest("d", "a", l => l.Name == "ad" ? 5 : Costs[l.Name])!.Select(s => s.Link.Name));
    }

    [Fact]
    public void Where_there_is_no_way_there_is_none_and_from_a_point_to_itself_no_step()
    {
        var path = new HarnessPath(Links);
        Assert.Null(path.Cheapest("a", "e", _ => 1));
        Assert.Null(path.Cheapest("a", "nowhere", _ => 1));
        Assert.Null(path.Cheapest("nowhere", "a", _ => 1));
        Assert.Null(path.Cheapest("a", "d", _ => null));
        Assert.Empty(path.Cheapest("a", "A", _ => null)!);
    }

    [Fact]
    public void Points_are_joined_by_what_is_always_there_and_by_closed_contacts()
    {
        Bike bike = Benches.Sidecar();
        var joined = new JoinedPoints(bike, HarnessLink.Of(bike));
        bool Are(string a, string b) => joined.Are(joined.NumberOf(a), joined.NumberOf(b));
        joined.Join([true, false, false]);
        Assert.True(Are(Bike.BatteryPlus, "LOW FEED"));
        Assert.False(Are(Bike.BatteryPlus, "high feed"));
        Assert.True(Are("head earth", Bike.BatteryMinus));
        Assert.False(Are(Bike.BatteryPlus, Bike.BatteryMinus));
        joined.Join([false, true, false]);
        Assert.False(Are(Bike.BatteryPlus, "low feed"));
        Assert.True(Are(Bike.BatteryPlus, "high feed"));
        joined.Join([]);
        Assert.True(Are("tail feed", "low feed"));
    }

    // With the lights off the dip contact lies on a dead line: on or off, the battery reaches the same.
    [Fact]
    public void Settings_that_differ_in_contacts_on_dead_lines_are_one_group()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with { Switches = bike.Switches.Add(Benches.Contact("dip", "low line", "dip line", "on")) };
        Setting[] settings = [.. SettingEnumeration.Of(bike, Condition.Always)];
        SettingGroups groups = SettingGroups.Of(bike, settings);
        int Group(string held) => groups.GroupOf[Array.IndexOf(settings, Benches.Set(bike, held))];
        Assert.Equal(Group(""), Group("dip=on"));
        Assert.Equal(Group("lights=high"), Group("lights=high; dip=on"));
        Assert.NotEqual(Group("lights=low"), Group("lights=low; dip=on"));
        Assert.NotEqual(Group("lights=low"), Group("lights=high"));
        Assert.Equal(6, groups.First.Length);
        Assert.Equal(settings[0], groups.First[0]);
        Assert.Same(settings, groups.Settings);
        int lowDip = Group("lights=low; dip=on");
        Assert.Equal([true, false, true, true], Enumerable.Range(0, 4).Select(groups.Closed[lowDip].Has));
    }

    private static HarnessLink Link(string from, string to, string name) => new(from, to, HarnessLinkKind.Run, 0, name);
}
