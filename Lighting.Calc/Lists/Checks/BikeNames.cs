namespace Lighting.Calc;

/// <summary>The names that a bike's lists give to its parts and points, to check references against.</summary>
/// <remarks>Names are gathered from the rows as written, so that a fault elsewhere in a row does not make its name
/// unknown as well.</remarks>
internal sealed class BikeNames
{
    private static readonly (ListSchema List, string Column, NamedThing Thing)[] s_columns =
    [
        (ListSchema.Lamps, "lamp", NamedThing.Lamp),
        (ListSchema.Lamps, "feed", NamedThing.Point),
        (ListSchema.Lamps, "return", NamedThing.Point),
        (ListSchema.Runs, "run", NamedThing.Run),
        (ListSchema.Runs, "from", NamedThing.Point),
        (ListSchema.Runs, "to", NamedThing.Point),
        (ListSchema.Switches, "switch", NamedThing.Switch),
        (ListSchema.Switches, "from", NamedThing.Point),
        (ListSchema.Switches, "to", NamedThing.Point),
        (ListSchema.Fuses, "fuse", NamedThing.Fuse),
        (ListSchema.Fuses, "from", NamedThing.Point),
        (ListSchema.Fuses, "to", NamedThing.Point),
        (ListSchema.Relays, "relay", NamedThing.Lamp),
    ];

    private readonly Dictionary<NamedThing, List<NameUse>> _uses = Enum.GetValues<NamedThing>()
        .ToDictionary(t => t, _ => new List<NameUse>());

    private readonly Dictionary<string, HashSet<string>> _known = [];
    private int _unknown;

    /// <summary>Whether every list was read whole; where not, nothing is checked, since a name may be in a part that
    /// could not be read.</summary>
    public bool IsComplete { get; private init; } = true;

    /// <summary>Where the points are named, the battery's two terminals left out.</summary>
    public IEnumerable<NameUse> Points =>
        _uses[NamedThing.Point]
            .Where(u => !Name.Equal(u.Text, Bike.BatteryPlus) && !Name.Equal(u.Text, Bike.BatteryMinus));

    public static BikeNames Of(ListTables tables)
    {
        ListSchema[] lists = [.. s_columns.Select(c => c.List).Distinct()];
        var names = new BikeNames
        {
            IsComplete = lists.All(l => !tables.Has(l) || tables.Find(l) is { IsWhole: true }),
        };
        foreach ((ListSchema list, string column, NamedThing thing) in s_columns)
            foreach (ListRow row in tables.Find(list)?.Rows ?? [])
                if (row.Text(column) is { } text)
                    names._uses[thing].Add(new NameUse(text, row, column));
        var seen = new HashSet<string>(Name.Comparer);
        foreach (ListRow row in tables.Find(ListSchema.Relays)?.Rows ?? [])
            foreach ((string column, string point) in RelaysReader.Points(row))
                // The coil is in the first row of a relay.
                if (!column.StartsWith("coil", StringComparison.Ordinal) || seen.Add($"{row.Text("relay")} {column}"))
                    names._uses[NamedThing.Point].Add(new NameUse(point, row, column));
        return names;
    }

    public static BikeNames Of(Bike bike)
    {
        var names = new BikeNames();
        Add(NamedThing.Lamp, bike.Lamps.Select(l => l.Lamp));
        Add(NamedThing.Run, bike.Runs.Select(r => r.Name));
        Add(NamedThing.Switch, bike.Switches.Select(s => s.Switch));
        Add(NamedThing.Fuse, bike.Fuses.Select(f => f.Name));
        Add(NamedThing.Point, [.. bike.Lamps.Select(l => l.Feed), .. bike.Lamps.Select(l => l.Return)]);
        Add(
            NamedThing.Point,
            [
                .. bike.Runs.SelectMany(r => (string[])[r.From, r.To]),
                .. bike.Switches.SelectMany(s => (string[])[s.From, s.To]),
            ]
        );
        Add(NamedThing.Point, [.. bike.Fuses.Select(f => f.From), .. bike.Fuses.Select(f => f.To)]);
        return names;

        void Add(NamedThing thing, IEnumerable<string?> texts) =>
            names._uses[thing].AddRange(texts.OfType<string>().Select(t => new NameUse(t, null, "")));
    }

    /// <summary>Whether a text is a point, as far as the lists could be read.</summary>
    public bool IsPoint(string text) => !IsComplete || Known([NamedThing.Point]).Contains(text);

    /// <summary>Logs a fault when a cell names nothing of these kinds.</summary>
    public void Check(ListRow row, string column, string text, string noun, NamedThing[] things)
    {
        if (!IsComplete)
            return;
        HashSet<string> known = Known(things);
        if (!known.Contains(text))
            row.Fault(
                column,
                text,
                $"is not {noun}",
                null,
                ++_unknown <= ListLimits.Explained ? SpellingSuggestions.Of(text, known) : []
            );
    }

    private HashSet<string> Known(NamedThing[] things)
    {
        string kinds = string.Join(' ', things);
        if (!_known.TryGetValue(kinds, out HashSet<string>? known))
        {
            _known.Add(kinds, known = things.SelectMany(t => _uses[t]).Select(u => u.Text).ToHashSet(Name.Comparer));
            if (things.Contains(NamedThing.Point))
                known.UnionWith([Bike.BatteryPlus, Bike.BatteryMinus]);
        }

        return known;
    }
}
