using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Network;

/// <summary>What the lists of a harness say against each other: a mis-drawn diagram is caught here.</summary>
/// <remarks>
/// A lamp counts as fed in a setting when closed parts join its feed to the live terminal and its return to the earth
/// terminal. Without runs there is nothing to review.
/// </remarks>
public static class WiringReview
{
    /// <summary>Reviews a harness.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="settings">Its settings, usually all of them.</param>
    /// <returns>What was found, in the order of the lists; nothing for a bike without runs.</returns>
    public static ImmutableArray<Finding> Of(Bike bike, IReadOnlyList<Setting> settings) => Of(bike, SettingGroups.Of(bike, settings));

    /// <summary>The same of settings that are grouped already.</summary>
    internal static ImmutableArray<Finding> Of(Bike bike, SettingGroups groups)
    {
        if (!bike.HasNetwork)
            return [];
        return
        [
            .. LampsAgainstContacts(bike, groups),
            // A lighting coil limits its own current; only a battery needs a fuse.
            .. bike.Lighting == LightingSupply.Battery ? LoadsWithoutFuse(bike, groups) : [],
            .. FusesThatFeedNothing(bike),
            .. PositionsNeverUsed(bike),
            .. PointsWithOneConnection(bike),
        ];
    }

    private static IEnumerable<Finding> LampsAgainstContacts(Bike bike, SettingGroups groups)
    {
        HarnessLink[] links = [.. HarnessLink.Of(bike)];
        HarnessLink[] withLamps = [.. links, .. bike.Lamps.Select((l, i) => new HarnessLink(l.Feed!, l.Return!, HarnessLinkKind.Lamp, i, l.Lamp))];
        var joined = new JoinedPoints(bike, links);
        int live = joined.NumberOf(bike.LivePoint), earth = joined.NumberOf(bike.EarthPoint);
        (int Feed, int Return)[] lamps = [.. bike.Lamps.Select(l => (joined.NumberOf(l.Feed!), joined.NumberOf(l.Return!)))];
        IReadOnlyList<Setting> settings = groups.Settings;
        var fed = new bool[bike.Lamps.Length, groups.First.Length];
        for (int g = 0; g < groups.First.Length; g++)
        {
            joined.Join(Closed(bike, groups.Closed[g]));
            for (int i = 0; i < lamps.Length; i++)
                fed[i, g] = joined.Are(live, lamps[i].Feed) && joined.Are(lamps[i].Return, earth);
        }

        for (int i = 0; i < lamps.Length; i++)
        {
            FittedLamp lamp = bike.Lamps[i];
            var litWhen = new ConditionTest(lamp.LitWhen);
            List<Setting> dark = [], lit = [], through = [];
            for (int s = 0; s < settings.Count; s++)
            {
                Setting setting = settings[s];
                bool meant = litWhen.Holds(setting);
                bool isFed = fed[i, groups.GroupOf[s]];
                if (meant && !isFed)
                    (IsFedThroughLamps(bike, withLamps, lamp, setting) ? through : dark).Add(setting);
                else if (!meant && isFed)
                    lit.Add(setting);
            }

            if (dark.Count > 0)
                yield return new Finding(Severity.Fault, lamp.Lamp, $"'lit when' says lit in the setting '{dark[0]}'{Others(dark)}, but the wiring leaves it dark: {WhyDark(bike, links, lamp, dark[0])}.");
            if (through.Count > 0)
                yield return new Finding(Severity.Note, lamp.Lamp, $"in the setting '{through[0]}'{Others(through)} its current goes on through another lamp before it reaches {bike.EarthPoint}.");
            if (lit.Count > 0)
                yield return new Finding(Severity.Fault, lamp.Lamp, $"'lit when' says dark in the setting '{lit[0]}'{Others(lit)}, but the wiring feeds it: {Described(Way(bike, links, bike.LivePoint, lamp.Feed!, lit[0])!, bike.LivePoint)}.");
        }
    }

    // One indicator lamp between the two sides is lit from either, its current going on through the other side's lamps.
    private static bool IsFedThroughLamps(Bike bike, HarnessLink[] links, FittedLamp lamp, Setting setting)
    {
        HarnessLink[] others = [.. links.Where(l => l.Kind != HarnessLinkKind.Lamp || !Name.Equal(l.Name, lamp.Lamp))];
        return Joined(lamp.Feed!, lamp.Return!) || Joined(lamp.Return!, lamp.Feed!);

        bool Joined(string live, string earth) =>
            HarnessPath.Cheapest(links.Where(l => l.Kind != HarnessLinkKind.Lamp), bike.LivePoint, live, Cost) is not null
            && HarnessPath.Cheapest(others, earth, bike.EarthPoint, Cost) is { } back && back.Any(s => s.Link.Kind == HarnessLinkKind.Lamp);

        double? Cost(HarnessLink link) => link.Kind == HarnessLinkKind.Contact && !bike.Switches[link.Index].IsClosed(setting) ? null : 1;
    }

    private static IEnumerable<Finding> LoadsWithoutFuse(Bike bike, SettingGroups groups)
    {
        HarnessLink[] unfused = [.. HarnessLink.Of(bike).Where(l => l.Kind != HarnessLinkKind.Fuse)];
        var joined = new JoinedPoints(bike, unfused);
        int live = joined.NumberOf(bike.LivePoint);
        int[] feeds = [.. bike.Lamps.Select(l => joined.NumberOf(l.Feed!))];
        var first = new Setting?[feeds.Length];
        for (int g = 0; g < groups.First.Length; g++)
        {
            joined.Join(Closed(bike, groups.Closed[g]));
            for (int i = 0; i < feeds.Length; i++)
                if (first[i] is null && joined.Are(live, feeds[i]))
                    first[i] = groups.First[g];
        }

        for (int i = 0; i < first.Length; i++)
            if (first[i] is { } setting)
                yield return new Finding(Severity.Fault, bike.Lamps[i].Lamp, $"fed without a fuse in the setting '{setting}': {Described(Way(bike, unfused, bike.LivePoint, bike.Lamps[i].Feed!, setting)!, bike.LivePoint)}.");
    }

    private static IEnumerable<Finding> FusesThatFeedNothing(Bike bike)
    {
        HarnessLink[] links = [.. HarnessLink.Of(bike)];
        foreach (Fuse fuse in bike.Fuses)
        {
            HarnessLink[] rest = [.. links.Where(l => l.Kind != HarnessLinkKind.Fuse || !Name.Equal(l.Name, fuse.Name))];
            var joined = new JoinedPoints(bike, rest);
            joined.Join([]);
            bool fromIsLive = Joined(bike.LivePoint, fuse.From!), toIsLive = Joined(bike.LivePoint, fuse.To!);
            if (!fromIsLive && !toIsLive)
            {
                yield return new Finding(Severity.Caution, fuse.Name, $"neither side of the fuse is joined to {bike.LivePoint}: it feeds nothing.");
                continue;
            }

            // In a loop both sides are live without it; otherwise what hangs on its dead side is what it feeds.
            string loadSide = fromIsLive ? fuse.To! : fuse.From!;
            if (fromIsLive != toIsLive && !bike.Lamps.Any(l => Joined(loadSide, l.Feed!)))
                yield return new Finding(Severity.Caution, fuse.Name, "the fuse feeds no lamp or other load.");

            bool Joined(string a, string b) => joined.Are(joined.NumberOf(a), joined.NumberOf(b));
        }
    }

    private static IEnumerable<Finding> PositionsNeverUsed(Bike bike)
    {
        foreach (SwitchDefinition definition in SettingEnumeration.SwitchesOf(bike))
        {
            ImmutableArray<SwitchContact> contacts = [.. bike.Switches.Where(c => Name.Equal(c.Switch, definition.Name))];
            if (contacts.IsEmpty)
            {
                yield return new Finding(Severity.Caution, definition.Name, "the lists name this switch in a condition, but it has no contact: it changes nothing.");
                continue;
            }

            foreach (string position in definition.Positions)
                if (!Name.Equal(position, SwitchDefinition.Off) && !contacts.Any(c => c.ClosedIn.Contains(position, Name.Comparer)))
                    yield return new Finding(Severity.Caution, definition.Name, $"no contact is closed in the position '{position}': it does what 'off' does.");
            foreach (string position in definition.Positions)
                if (!Name.Equal(position, SwitchDefinition.Off) && !NamedInConditions(bike, definition.Name, position) && bike.Lamps.Any(l => l.LitWhen.Terms.Any(t => Name.Equal(t.Switch, definition.Name))))
                    yield return new Finding(Severity.Note, definition.Name, $"the position '{position}' is never used by a 'lit when'.");
        }
    }

    private static bool NamedInConditions(Bike bike, string switchName, string position) => bike.Lamps.Any(l =>
        l.LitWhen.Terms.Any(t => Name.Equal(t.Switch, switchName) && t.Positions.Contains(position, Name.Comparer)));

    private static IEnumerable<Finding> PointsWithOneConnection(Bike bike)
    {
        IEnumerable<string> ends = HarnessLink.Of(bike).SelectMany(l => new[] { l.From, l.To })
            .Concat(bike.Lamps.SelectMany(l => new[] { l.Feed!, l.Return! }))
            .Concat([Bike.BatteryPlus, Bike.BatteryMinus]);
        foreach (IGrouping<string, string> point in ends.GroupBy(p => p, Name.Comparer))
            if (point.Count() == 1)
                yield return new Finding(Severity.Caution, point.Key, "only one part is joined to this point; is another part, or a spelling, missing?");
    }

    private static IReadOnlyList<HarnessStep>? Way(Bike bike, IEnumerable<HarnessLink> links, string from, string to, Setting setting) =>
        HarnessPath.Cheapest(links, from, to, l => l.Kind == HarnessLinkKind.Contact && !bike.Switches[l.Index].IsClosed(setting) ? null : 1);

    private static string WhyDark(Bike bike, HarnessLink[] links, FittedLamp lamp, Setting setting)
    {
        foreach ((string from, string to) in new[] { (bike.LivePoint, lamp.Feed!), (lamp.Return!, bike.EarthPoint) })
        {
            // The way with fewest open contacts shows which of them would have to close.
            IReadOnlyList<HarnessStep>? way = HarnessPath.Cheapest(links, from, to, l => l.Kind == HarnessLinkKind.Contact && !bike.Switches[l.Index].IsClosed(setting) ? 1000 : 1);
            if (way is null)
                return $"nothing joins '{from}' to '{to}'";
            IEnumerable<string> openContacts = way.Where(s => s.Link.Kind == HarnessLinkKind.Contact && !bike.Switches[s.Link.Index].IsClosed(setting)).Select(s => $"'{s.Link.Name}'");
            if (openContacts.Any())
                return $"open contact {string.Join(" and ", openContacts)} on the way {Described(way, from)}";
        }

        return "no way was found";
    }

    private static string Described(IReadOnlyList<HarnessStep> way, string start) =>
        way.Count == 0 ? $"it hangs on {start}" : $"{start} > {string.Join(" > ", way.Select(s => $"{s.Link.Name} > {s.End}"))}";

    private static string Others(List<Setting> settings) => settings.Count > 1 ? $" (and {settings.Count - 1} more)" : "";

    private static bool[] Closed(Bike bike, ContactSet contacts)
    {
        bool[] closed = new bool[bike.Switches.Length];
        for (int i = 0; i < closed.Length; i++)
            closed[i] = contacts.Has(i);
        return closed;
    }
}
