using System.Collections.Immutable;

namespace Lighting.Calc.Tests.Network;

/// <summary>Settings as numbers of a bike's switches, and what they close.</summary>
public class SwitchesTests
{
    private static readonly Bike s_bike = Benches.Sidecar();
    private static readonly Switches s_switches = new(s_bike);

    [Theory]
    [InlineData("lights=low", new[] { 0, 2 })]
    [InlineData("LIGHTS=High", new[] { 1, 2 })]
    [InlineData("", new int[0])]
    [InlineData("lights=nowhere", new int[0])]
    public void A_setting_made_elsewhere_closes_what_its_names_say(string held, int[] closed)
    {
        var setting = new Setting(
            held.Length == 0
                ? []
                : [new SwitchPosition(held.Split('=')[0], held.Split('=')[1]), new SwitchPosition("other", "on")]
        );
        Assert.Equal(closed, Enumerable.Range(0, 3).Where(s_switches.ClosedIn(setting).Has));
        Assert.Equal(closed, Enumerable.Range(0, 3).Where(c => s_bike.Switches[c].IsClosed(setting)));
    }

    [Theory]
    [InlineData("lights=low|pass")]
    [InlineData("")]
    [InlineData("lights=off or lights2=on")]
    [InlineData("brake=on")]
    [InlineData("lights=low or brake=on; lights=low|high")]
    public void A_condition_tested_by_numbers_holds_where_it_holds_by_names(string text)
    {
        Bike bike = s_bike with { Switches = s_bike.Switches.Add(Benches.Contact("lights2", "a", "b", "on")) };
        var condition = Condition.Parse(text);
        Func<Setting, bool> test = new Switches(bike).TestOf(condition);
        foreach (Setting setting in SettingEnumeration.Of(bike, Condition.Always))
            Assert.Equal(condition.Holds(setting), test(setting));
    }

    [Fact]
    public void Settings_of_two_bikes_are_equal_when_their_positions_are_named_alike()
    {
        Setting numbered = SettingEnumeration.Of(s_bike, Condition.Parse("lights=high")).Single(),
            named = new([new SwitchPosition("Lights", "HIGH")]);
        Assert.Equal(numbered, named);
        Assert.Equal(numbered.GetHashCode(), named.GetHashCode());
        Assert.NotEqual(numbered, new Setting([new SwitchPosition("lights", "low")]));
        Assert.NotEqual(numbered, new Setting([new SwitchPosition("light", "high")]));
        Assert.Equal([new SwitchPosition("lights", "high")], numbered.Positions);
    }

    [Fact]
    public void More_contacts_than_bits_of_a_word_are_told_apart()
    {
        ImmutableArray<SwitchContact> contacts =
        [
            .. Enumerable
                .Range(0, 140)
                .Select(i => Benches.Contact($"switch {i % 2}", "a", "b", i % 3 == 0 ? "on" : "far")),
        ];
        Bike bike = s_bike with { Switches = contacts };
        var switches = new Switches(bike);
        foreach (Setting setting in SettingEnumeration.Of(bike, Condition.Always))
        {
            ContactSet closed = switches.ClosedIn(setting),
                odd = ContactSet.Where(140, c => c % 2 == 1);
            Assert.Equal(contacts.Select(c => c.IsClosed(setting)), Enumerable.Range(0, 140).Select(closed.Has));
            Assert.Equal(
                contacts.Select((c, i) => i % 2 == 1 && c.IsClosed(setting)),
                Enumerable.Range(0, 140).Select(closed.And(odd).Has)
            );
            Assert.Equal(closed, closed.And(odd).Or(closed.And(ContactSet.Where(140, c => c % 2 == 0))));
            Assert.NotEqual(
                closed,
                closed
                    .Or(ContactSet.Where(140, c => c == 139))
                    .And(ContactSet.Where(140, c => c != 139 || !closed.Has(139)))
            );
        }
    }
}
