namespace Lighting.Calc;

/// <summary>Checks that the names of a column are unique.</summary>
internal sealed class UniqueNames(string column, string noun)
{
    private readonly Dictionary<string, string> _places = new(Name.Comparer);

    /// <summary>Takes a row's name; logs a fault when a row before has it, or when it is blank.</summary>
    public string Take(ListRow row)
    {
        if (row.Required(column) is not { } name)
            return "";
        if (!_places.TryAdd(name, row.Where))
            row.Fault(column, name, $"is the name of the {noun} on {_places[name]} already", "give each its own name");
        return name;
    }
}
