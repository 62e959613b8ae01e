using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Network;

/// <summary>What the lists of a harness say against each other: a mis-drawn diagram is caught here.</summary>
/// <remarks>
/// Whether a lamp is lit follows from the voltage across it, as for the expected readings. Without runs there is nothing to review.
/// </remarks>
public static class WiringReview
{
    /// <summary>Reviews a harness.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="points">Its operating points, usually of all settings.</param>
    /// <returns>What was found, in the order of the lists; nothing for a bike without runs.</returns>
    public static ImmutableArray<Finding> Of(Bike bike, IReadOnlyList<OperatingPoint> points)
    {
        if (!bike.HasNetwork)
            return [];
        var groups = SettingGroups.Of(bike, [.. points.Select(p => p.Setting)]);
        return [.. LitReview.Of(bike, points, groups), .. Of(bike, groups)];
    }

    /// <summary>What follows from the wiring alone, whatever the values of its parts.</summary>
    internal static ImmutableArray<Finding> Of(Bike bike, SettingGroups groups)
    {
        if (!bike.HasNetwork)
            return [];
        return
        [
            // A lighting coil limits its own current; only a battery needs a fuse.
            .. bike.Lighting == LightingSupply.Battery ? LoadsWithoutFuse(bike, groups) : [],
            .. FusesThatFeedNothing(bike),
            .. PositionsNeverUsed(bike),
            .. PointsWithOneConnection(bike),
        ];
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

    internal static string Described(IReadOnlyList<HarnessStep> way, string start) =>
        way.Count == 0 ? $"it hangs on {start}" : $"{start} > {string.Join(" > ", way.Select(s => $"{s.Link.Name} > {s.End}"))}";

    private static bool[] Closed(Bike bike, ContactSet contacts)
    {
        bool[] closed = new bool[bike.Switches.Length];
        for (int i = 0; i < closed.Length; i++)
            closed[i] = contacts.Has(i);
        return closed;
    }
}
