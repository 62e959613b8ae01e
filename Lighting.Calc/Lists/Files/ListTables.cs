namespace Lighting.Calc;

/// <summary>The lists of a bike as rows of text, and which of them the bike has.</summary>
internal sealed class ListTables
{
    private readonly Dictionary<ListSchema, ListTable?> _tables = [];

    /// <summary>Opens every known list; logs a caution for an unknown one and a fault when there are no
    /// lamps.</summary>
    public static ListTables Open(ListSource source, FaultLog log)
    {
        var tables = new ListTables();
        foreach (ListSchema schema in ListSchema.All)
        {
            if (source.Files.FirstOrDefault(f => Name.Equal(f.Name, schema.File)) is not { } file)
                continue;
            log.Begin(file.Label);
            tables._tables[schema] = file.Table(schema, log);
        }

        foreach (ListFile file in source.Files.Where(f => !ListSource.KnownNames.Contains(f.Name, Name.Comparer)))
        {
            log.Begin(file.Label);
            log.Caution(
                new ListFault
                {
                    File = file.Label,
                    Problem = "is not a list of a bike and was not read",
                    Expected = $"the lists are {string.Join(", ", ListSource.KnownNames)}",
                    Nearest = SpellingSuggestions.Of(file.Name, ListSource.KnownNames),
                }
            );
        }

        if (!tables.Has(ListSchema.Lamps))
            log.Fault(
                new ListFault
                {
                    File = source.NameOf(ListSchema.Lamps),
                    Problem = "the list is missing",
                    Expected = "a bike needs at least its lamps",
                    Nearest = [],
                }
            );
        else if (tables.Find(ListSchema.Lamps) is { Rows.IsEmpty: true, IsWhole: true } lamps)
            log.Fault(
                new ListFault
                {
                    File = lamps.File,
                    Line = source.HeaderLine,
                    Problem = "the list has no lamps",
                    Expected = "give each lamp a row below the header",
                }
            );
        return tables;
    }

    /// <summary>Whether the bike has the list, readable or not.</summary>
    public bool Has(ListSchema schema) => _tables.ContainsKey(schema);

    /// <summary>The list; null if the bike has none or its header cannot be read.</summary>
    public ListTable? Find(ListSchema schema) => _tables.GetValueOrDefault(schema);

    /// <summary>Whether the bike has the list but its header cannot be read, so that nothing can be checked against
    /// it.</summary>
    public bool IsUnreadable(ListSchema schema) => Has(schema) && Find(schema) is null;
}
