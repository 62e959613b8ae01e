using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Settings of a bike in groups of one electrical state: what is connected to the battery, and what may carry
/// current, is the same in a group.</summary>
/// <remarks>Settings of one group have the same currents whatever the values of the bike's parts. Without runs
/// conditions say which lamps are lit, and each setting is a group of its own.</remarks>
internal sealed class SettingGroups
{
    private bool[][]? _fed;

    /// <param name="graph">The bike's wiring.</param>
    /// <param name="settings">The settings.</param>
    public SettingGroups(HarnessGraph graph, IReadOnlyList<Setting> settings)
    {
        (Graph, Settings) = (graph, settings);
        var joined = new ConnectedNodes(graph);
        var groups = new Dictionary<ContactSet, int>();
        var groupOf = ImmutableArray.CreateBuilder<int>(settings.Count);
        var first = ImmutableArray.CreateBuilder<Setting>();
        var closedIn = ImmutableArray.CreateBuilder<ContactSet>();
        var mayCarry = ImmutableArray.CreateBuilder<ContactSet>();
        foreach (Setting setting in settings)
        {
            ContactSet closed = graph.Switches.ClosedIn(setting),
                carrying = graph.Carrying.Of(closed);
            joined.Join(closed);
            var inUse = ContactSet.Where(
                graph.Contacts.Length,
                c => carrying.Has(c) || closed.Has(c) && IsJoined(graph.Contacts[c].A)
            );
            if (graph.Runs.IsEmpty || !groups.TryGetValue(inUse, out int group))
            {
                group = first.Count;
                groups.TryAdd(inUse, group);
                first.Add(setting);
                closedIn.Add(closed);
                mayCarry.Add(carrying);
            }

            groupOf.Add(group);
        }

        (GroupOf, First, Closed, MayCarry) = (
            groupOf.MoveToImmutable(),
            first.ToImmutable(),
            closedIn.ToImmutable(),
            mayCarry.ToImmutable()
        );

        bool IsJoined(int point) => joined.Are(point, HarnessGraph.Plus) || joined.Are(point, HarnessGraph.Minus);
    }

    /// <summary>The bike's wiring.</summary>
    public HarnessGraph Graph { get; }

    /// <summary>The settings.</summary>
    public IReadOnlyList<Setting> Settings { get; }

    /// <summary>The group of each setting.</summary>
    public ImmutableArray<int> GroupOf { get; }

    /// <summary>The first setting of each group.</summary>
    public ImmutableArray<Setting> First { get; }

    /// <summary>The closed contacts of each group's first setting.</summary>
    public ImmutableArray<ContactSet> Closed { get; }

    /// <summary>The contacts that are closed in the settings of each group and may carry current.</summary>
    public ImmutableArray<ContactSet> MayCarry { get; }

    /// <summary>Whether closed parts, not counting lamps, join a lamp's feed to the live terminal and its return to the
    /// earth terminal in the settings of a group.</summary>
    public bool IsFed(int lamp, int group) => (_fed ??= Fed())[group][lamp];

    /// <summary>Groups settings of a bike.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="settings">The settings.</param>
    public static SettingGroups Of(Bike bike, IReadOnlyList<Setting> settings) => new(new HarnessGraph(bike), settings);

    private bool[][] Fed()
    {
        var joined = new ConnectedNodes(Graph);
        return [.. Closed.Select(FedIn)];

        bool[] FedIn(ContactSet closed)
        {
            joined.Join(closed);
            return [.. Graph.Lamps.Select(l => joined.Are(l.A, Graph.Live) && joined.Are(l.B, Graph.Earth))];
        }
    }
}
