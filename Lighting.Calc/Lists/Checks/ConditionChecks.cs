namespace Lighting.Calc;

/// <summary>Checks that conditions name switches and positions the bike has.</summary>
/// <remarks>
/// <c>switches.csv</c> says what there is; without it the conditions of lamps and charging do, and a name used once
/// that looks like another is a caution.
/// </remarks>
internal static class ConditionChecks
{
    private static readonly (ListSchema List, string Column)[] s_defining =
    [
        (ListSchema.Lamps, "lit when"),
        (ListSchema.Charging, "when"),
    ];
    private static readonly (ListSchema List, string Column)[] s_holding =
    [
        (ListSchema.Ride, "when"),
    ];
    private static readonly (ListSchema List, string Column)[] s_reading = [(ListSchema.Readings, "when")];

    public static void Run(ListTables tables)
    {
        var book = new SwitchBook();
        var defining = Conditions(tables, s_defining).ToList();
        if (tables.Has(ListSchema.Switches))
        {
            if (tables.Find(ListSchema.Switches) is not { IsWhole: true } switches)
                return;
            // What cannot be off is said in one row of the switch, which may be its last.
            foreach (ListRow row in switches.Rows.OrderBy(r => SwitchesReader.SaysNoOff(r)))
                if (row.Text("switch") is { } name)
                    book.Add(
                        name,
                        SwitchesReader.Split(row.Text("closed in") ?? SwitchDefinition.Off),
                        !SwitchesReader.SaysNoOff(row)
                    );
            Check(book, defining);
        }
        else
        {
            if (
                s_defining.Any(d => tables.Has(d.List) && tables.Find(d.List) is not { IsWhole: true })
                || defining.Any(d => d.Condition is null)
            )
                return;
            defining.ForEach(d => book.Add(d.Condition!));
            CautionLookAlikes(book, defining);
        }

        Check(book, Conditions(tables, s_holding));
        Check(book, Conditions(tables, s_reading), takesEngine: true);
    }

    /// <summary>Checks a separate list against a bike.</summary>
    /// <param name="table">The list, of readings or of charging.</param>
    /// <param name="bike">The bike.</param>
    /// <param name="takesEngine">Whether its conditions may state the engine.</param>
    public static void Run(ListTable table, Bike bike, bool takesEngine = true)
    {
        var book = new SwitchBook();
        foreach (SwitchContact contact in bike.Switches.Where(c => !c.IsRelay))
            book.Add(contact.Switch, contact.ClosedIn, contact.HasOff);
        if (bike.Switches.IsEmpty)
        {
            foreach (Condition condition in bike.Lamps.Select(l => l.LitWhen).Concat(bike.Charging.Select(c => c.When)))
                book.Add(condition);
        }

        Check(book, table.Rows.Select(row => (row, "when", row.ConditionOrNull("when"))), takesEngine);
    }

    private static void Check(
        SwitchBook book,
        IEnumerable<(ListRow Row, string Column, Condition? Condition)> conditions,
        bool takesEngine = false
    )
    {
        foreach ((ListRow row, string column, Condition? condition) in conditions)
            if (condition is not null)
                book.Check(row, column, condition, takesEngine);
    }

    private static void CautionLookAlikes(
        SwitchBook book,
        List<(ListRow Row, string Column, Condition? Condition)> conditions
    )
    {
        var terms = conditions.SelectMany(c => c.Condition!.Terms.Select(t => (c.Row, c.Column, Term: t))).ToList();
        var switches = terms
            .CountBy(t => t.Term.Switch, Name.Comparer)
            .ToDictionary(c => c.Key, c => c.Value, Name.Comparer);
        var named = terms
            .SelectMany(t => t.Term.Positions.Distinct(Name.Comparer).Select(p => $"{t.Term.Switch}={p}"))
            .CountBy(p => p, Name.Comparer)
            .ToDictionary(c => c.Key, c => c.Value, Name.Comparer);
        foreach ((ListRow row, string column, ConditionTerm term) in terms)
        {
            if (switches[term.Switch] == 1 && book.SwitchesLike(term.Switch) is { Length: > 0 } alike)
                row.Caution(column, term.Switch, "is a switch that only this row names", null, alike);
            foreach (string position in term.Positions)
                if (
                    named[$"{term.Switch}={position}"] == 1
                    && book.PositionsLike(term.Switch, position) is { Length: > 0 } positions
                )
                    row.Caution(
                        column,
                        position,
                        $"is a position of the switch '{term.Switch}' that only this row names",
                        null,
                        positions
                    );
        }
    }

    private static IEnumerable<(ListRow Row, string Column, Condition? Condition)> Conditions(
        ListTables tables,
        (ListSchema List, string Column)[] columns
    ) =>
        from place in columns
        from row in tables.Find(place.List)?.Rows ?? []
        select (row, place.Column, row.ConditionOrNull(place.Column));
}
