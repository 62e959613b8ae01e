using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Network;

/// <summary>Settings of a bike in groups that differ in contacts only to which no way from the battery leads: what is joined to the battery is the same in a group.</summary>
internal sealed class SettingGroups
{
    private readonly Bike _bike;
    private bool[,]? _fed;

    private SettingGroups(Bike bike, IReadOnlyList<Setting> settings, ImmutableArray<int> groupOf, ImmutableArray<Setting> first, ImmutableArray<ContactSet> closed) =>
        (_bike, Settings, GroupOf, First, Closed) = (bike, settings, groupOf, first, closed);

    /// <summary>The settings.</summary>
    public IReadOnlyList<Setting> Settings { get; }

    /// <summary>The group of each setting.</summary>
    public ImmutableArray<int> GroupOf { get; }

    /// <summary>The first setting of each group.</summary>
    public ImmutableArray<Setting> First { get; }

    /// <summary>The closed contacts of each group's first setting.</summary>
    public ImmutableArray<ContactSet> Closed { get; }

    /// <summary>Whether closed parts, not counting lamps, join a lamp's feed to the live terminal and its return to the earth terminal in the settings of a group.</summary>
    public bool IsFed(int lamp, int group) => (_fed ??= Fed())[lamp, group];

    private bool[,] Fed()
    {
        var joined = new JoinedPoints(_bike, HarnessLink.Of(_bike));
        int live = joined.NumberOf(_bike.LivePoint), earth = joined.NumberOf(_bike.EarthPoint);
        (int Feed, int Return)[] lamps = [.. _bike.Lamps.Select(l => (joined.NumberOf(l.Feed!), joined.NumberOf(l.Return!)))];
        var fed = new bool[lamps.Length, First.Length];
        for (int g = 0; g < First.Length; g++)
        {
            joined.Join([.. Enumerable.Range(0, _bike.Switches.Length).Select(Closed[g].Has)]);
            for (int i = 0; i < lamps.Length; i++)
                fed[i, g] = joined.Are(live, lamps[i].Feed) && joined.Are(lamps[i].Return, earth);
        }

        return fed;
    }

    /// <summary>Groups settings.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="settings">The settings.</param>
    public static SettingGroups Of(Bike bike, IReadOnlyList<Setting> settings)
    {
        var joined = new JoinedPoints(bike, HarnessLink.Of(bike));
        int live = joined.NumberOf(bike.LivePoint), earth = joined.NumberOf(bike.EarthPoint), contacts = bike.Switches.Length;
        var tests = new ContactTests(bike);
        (int From, int To)[] ends = [.. bike.Switches.Select(s => (joined.NumberOf(s.From), joined.NumberOf(s.To)))];
        var groups = new Dictionary<ContactSet, int>();
        var groupOf = ImmutableArray.CreateBuilder<int>(settings.Count);
        var first = ImmutableArray.CreateBuilder<Setting>();
        var closedIn = ImmutableArray.CreateBuilder<ContactSet>();
        foreach (Setting setting in settings)
        {
            bool[] closed = tests.ClosedIn(setting);
            joined.Join(closed);
            var met = ContactSet.Where(contacts, i => closed[i] && (joined.Are(ends[i].From, live) || joined.Are(ends[i].From, earth)));
            if (!groups.TryGetValue(met, out int group))
            {
                groups.Add(met, group = groups.Count);
                first.Add(setting);
                closedIn.Add(ContactSet.Where(contacts, i => closed[i]));
            }

            groupOf.Add(group);
        }

        return new SettingGroups(bike, settings, groupOf.MoveToImmutable(), first.ToImmutable(), closedIn.ToImmutable());
    }
}
