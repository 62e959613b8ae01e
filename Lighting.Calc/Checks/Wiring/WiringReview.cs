using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What the lists of a harness say against each other: a mis-drawn diagram is caught here.</summary>
/// <remarks>
/// Whether a lamp is lit follows from the voltage across it, as for the expected readings. Without runs there is
/// nothing to review.
/// </remarks>
internal static class WiringReview
{
    /// <summary>What follows from the wiring alone, whatever the values of its parts.</summary>
    internal static ImmutableArray<Finding> Evaluate(Bike bike, SettingGroups groups)
    {
        if (!bike.HasNetwork)
            return [];
        return
        [
            // A lighting coil limits its own current; only a battery needs a fuse.
            .. bike.Lighting == LightingSupply.Battery ? LoadsWithoutFuse(groups).TogetherByKind() : [],
            .. FusesThatFeedNothing(bike, groups.Graph),
            .. PositionsNeverUsed(bike, groups.Graph.Switches.Definitions),
            .. PointsWithOneConnection(groups.Graph).TogetherByKind(),
        ];
    }

    private static IEnumerable<Finding> LoadsWithoutFuse(SettingGroups groups)
    {
        HarnessGraph graph = groups.Graph;
        var joined = new ConnectedNodes(graph, fuses: false);
        var first = new int?[graph.Lamps.Length];
        for (int g = 0; g < groups.First.Length; g++)
        {
            joined.Join(groups.Closed[g]);
            for (int i = 0; i < first.Length; i++)
                first[i] ??= joined.Are(graph.Live, graph.Lamps[i].A) ? g : null;
        }

        // Of those with one cause the first to be fed is named with its path.
        foreach (HarnessPart lamp in graph.Lamps.Where(l => first[l.Index] is not null).OrderBy(l => first[l.Index]))
            if (groups.First[first[lamp.Index]!.Value] is var setting)
                yield return new Finding(FindingKind.LampUnfused, Severity.Fault, lamp.Name)
                {
                    Setting = setting,
                    Detail = Way(setting, lamp),
                };

        string Way(Setting setting, HarnessPart lamp) =>
            graph.Described(
                graph.Live,
                graph
                    .From(graph.Live, graph.Switches.ClosedIn(setting), p => p.Kind != HarnessPartKind.Fuse)
                    .PathTo(lamp.A)
            );
    }

    private static IEnumerable<Finding> FusesThatFeedNothing(Bike bike, HarnessGraph graph)
    {
        foreach (HarnessPart fuse in graph.Fuses)
        {
            // With every contact closed.
            Func<HarnessPart, double> rest = p => p == fuse || p.Kind == HarnessPartKind.Lamp ? HarnessGraph.NoWay : 1;
            Reached live = graph.From(graph.Live, rest);
            if (!live.Meets(fuse))
                yield return new Finding(FindingKind.FuseNotConnected, Severity.Caution, fuse.Name)
                {
                    Detail = bike.LivePoint,
                };
            // In a loop both sides are live without it; otherwise what hangs on its dead side is what it feeds.
            else if (
                !live.Reaches(fuse)
                && graph.From(live.Reaches(fuse.A) ? fuse.B : fuse.A, rest) is var behind
                && !graph.Lamps.Any(l => behind.Reaches(l.A))
            )
                yield return new Finding(FindingKind.FuseFeedsNothing, Severity.Caution, fuse.Name);
        }
    }

    private static IEnumerable<Finding> PositionsNeverUsed(Bike bike, ImmutableArray<SwitchDefinition> switches)
    {
        foreach (SwitchDefinition definition in switches)
        {
            ImmutableArray<SwitchContact> contacts =
            [
                .. bike.Switches.Where(c => Name.Equal(c.Switch, definition.Name)),
            ];
            if (contacts.IsEmpty)
            {
                yield return new Finding(FindingKind.SwitchWithoutContact, Severity.Caution, definition.Name);
                continue;
            }

            string[] positions = [.. definition.Positions.Where(p => !Name.Equal(p, SwitchDefinition.Off))];
            string[] open = [.. positions.Where(p => !contacts.Any(c => c.ClosedIn.Contains(p, Name.Comparer)))];
            if (open.Length > 0)
                yield return new Finding(FindingKind.PositionWithoutContact, Severity.Caution, definition.Name)
                {
                    Parts = [.. open],
                };
            string[] unnamed = [.. positions.Where(p => !NamedInConditions(bike, definition.Name, p))];
            if (
                unnamed.Length > 0
                && bike.Lamps.Any(l => l.LitWhen.Terms.Any(t => Name.Equal(t.Switch, definition.Name)))
            )
                yield return new Finding(FindingKind.PositionNotNamed, Severity.Note, definition.Name)
                {
                    Parts = [.. unnamed],
                };
        }
    }

    private static bool NamedInConditions(Bike bike, string switchName, string position) =>
        bike.Lamps.Any(l =>
            l.LitWhen.Terms.Any(t => Name.Equal(t.Switch, switchName) && t.Positions.Contains(position, Name.Comparer))
        );

    private static IEnumerable<Finding> PointsWithOneConnection(HarnessGraph graph) =>
        graph
            .Parts.SelectMany(p => new[] { p.A, p.B })
            .Concat([HarnessGraph.Plus, HarnessGraph.Minus])
            .CountBy(p => p)
            .Where(p => p.Value == 1)
            .Select(p => new Finding(FindingKind.PointWithOneConnection, Severity.Caution, graph.Points[p.Key]));
}
