// Which contacts the settings of a bike close, and which settings share their currents.
using System.Collections.Immutable;
using Lighting.Calc.Harness;
using Lighting.Calc.Lists;
using Lighting.Calc.Network;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Network;

public sealed class ClosedContactsTests
{
    [Theory]
    [InlineData("valley-twin")]
    [InlineData("chapel-single")]
    [InlineData("fell-lightweight")]
    public void Settings_of_one_state_close_the_same_contacts_that_carry_and_have_the_same_currents(string name)
    {
        Bike bike = BikeLists.Read(CliProcess.Bike(name)).Value.Bike;
        var network = new HarnessNetwork(bike);
        ImmutableArray<Setting> settings = [.. SettingEnumeration.Of(bike, Condition.Always)];
        var contacts = new ClosedContacts(network, settings);
        var states = new Dictionary<int, (string Carrying, double Amperes)>();
        for (int s = 0; s < settings.Length; s++)
        {
            OperatingPoint point = new HarnessNetwork(bike).CreateSolver().Solve(settings[s]);
            Assert.Equal(point.Contacts.Select(c => c.Closed), contacts.In(s));
            for (int c = 0; c < contacts.MayCarry(s).Length; c++)
                Assert.True(contacts.MayCarry(s)[c] || Math.Abs(point.Contacts[c].Current.Amperes) < 1e-9, $"{settings[s]}, contact {c}");
            string carrying = string.Join(' ', contacts.MayCarry(s).ToArray());
            if (!states.TryAdd(contacts.StateOf(s), (carrying, point.TotalCurrent.Amperes)))
            {
                Assert.Equal(states[contacts.StateOf(s)].Carrying, carrying);
                Assert.Equal(states[contacts.StateOf(s)].Amperes, point.TotalCurrent.Amperes, 1e-9);
            }
        }

        Assert.Equal(states.Count, contacts.States);
        Assert.Equal(states.Count, states.Values.Select(v => v.Carrying).Distinct().Count());
        Assert.Equal(Enumerable.Range(0, contacts.States), states.Keys.Order());
        // Only the lightweight's few switches leave no two settings alike.
        Assert.Equal(name != "fell-lightweight", contacts.States < settings.Length);
    }

    /// <remarks>There conditions say which lamps are lit, so that no two settings are known to be alike.</remarks>
    [Fact]
    public void Without_wires_every_setting_is_a_state_of_its_own()
    {
        ListSource lists = ListSource.Empty.With("lamps.csv", "circuit,lamp,volts,watts,lit when\nmain,head,12,45,lights=on\ntail,tail,12,5,lights=on|side\n")
            .With("switches.csv", "switch,from,to,closed in\nlights,a,b,side|on\nlights,b,c,on\n");
        Bike bike = BikeLists.Read(lists).Value.Bike;
        ImmutableArray<Setting> settings = [.. SettingEnumeration.Of(bike, Condition.Always)];
        var contacts = new ClosedContacts(new HarnessNetwork(bike), settings);
        Assert.True(settings.Length > 1);
        Assert.Equal(settings.Length, contacts.States);
        Assert.Equal(Enumerable.Range(0, settings.Length), Enumerable.Range(0, settings.Length).Select(contacts.StateOf));
    }
}
