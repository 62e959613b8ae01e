using System.Collections.Immutable;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Network;

/// <summary>Which settings are one electrical state, and which contacts may carry current in it.</summary>
public sealed class SettingGroupsTests
{
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
        // The dip line ends there.
        Assert.Equal([true, false, true, false], Enumerable.Range(0, 4).Select(groups.MayCarry[lowDip].Has));
    }

    [Theory]
    [InlineData("valley-twin")]
    [InlineData("chapel-single")]
    [InlineData("fell-lightweight")]
    public void Settings_of_one_group_have_the_same_currents_in_contacts_that_may_carry_them(string name)
    {
        Bike bike = BikeLists.Read(CliProcess.Bike(name)).Value.Bike;
        ImmutableArray<Setting> settings = [.. SettingEnumeration.Of(bike, Condition.Always)];
        SettingGroups groups = SettingGroups.Of(bike, settings);
        var amperes = new Dictionary<int, double>();
        for (int s = 0; s < settings.Length; s++)
        {
            int group = groups.GroupOf[s];
            OperatingPoint point = new HarnessNetwork(bike).CreateSolver().Solve(settings[s]);
            Assert.Equal(bike.Switches.Select(c => c.IsClosed(settings[s])), point.Contacts.Select(c => c.Closed));
            Assert.All(
                point.Contacts,
                (c, i) =>
                    Assert.True(
                        groups.MayCarry[group].Has(i) || Math.Abs(c.Current.Amperes) < 1e-9,
                        $"{settings[s]}, contact {i}"
                    )
            );
            if (!amperes.TryAdd(group, point.TotalCurrent.Amperes))
                Assert.Equal(amperes[group], point.TotalCurrent.Amperes, 1e-9);
        }

        Assert.Equal(Enumerable.Range(0, groups.First.Length), amperes.Keys.Order());
        // Only the lightweight's few switches leave no two settings alike.
        Assert.Equal(name != "fell-lightweight", groups.First.Length < settings.Length);
    }

    /// <remarks>There conditions say which lamps are lit, so that no two settings are known to be alike.</remarks>
    [Fact]
    public void Without_wires_every_setting_is_a_group_of_its_own()
    {
        ListSource lists = ListSource
            .Empty.With(
                "lamps.csv",
                "circuit,lamp,volts,watts,lit when\nmain,head,12,45,lights=on\ntail,tail,12,5,lights=on|side\n"
            )
            .With("switches.csv", "switch,from,to,closed in\nlights,a,b,side|on\nlights,b,c,on\n");
        Bike bike = BikeLists.Read(lists).Value.Bike;
        ImmutableArray<Setting> settings = [.. SettingEnumeration.Of(bike, Condition.Always)];
        Assert.True(settings.Length > 1);
        Assert.Equal(Enumerable.Range(0, settings.Length), SettingGroups.Of(bike, settings).GroupOf);
    }
}
