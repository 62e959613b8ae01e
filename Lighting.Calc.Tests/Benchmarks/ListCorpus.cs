namespace Lighting.Calc.Benchmarks;

/// <summary>The lists that fuzzing starts from, and a bike around one that was mutated.</summary>
internal sealed class ListCorpus(string folder)
{
    public (string Name, byte[] Text)[] Lists { get; } =
    [
        .. Directory
            .GetFiles(folder, "*.csv", SearchOption.AllDirectories)
            .Order(StringComparer.Ordinal)
            .Select(f => (NameOf(f), File.ReadAllBytes(f))),
    ];

    private (string Name, byte[] Text)[] Shortest =>
        field ??= [.. Lists.GroupBy(l => l.Name).Select(g => g.MinBy(l => l.Text.Length))];

    /// <summary>The other lists of the corpus beside the one given, the shortest of each name; or, alone, just its
    /// lamps.</summary>
    public ListSource Around(string name, byte[] text, bool alone)
    {
        ListSource source = ListSource.Empty.With(name, text);
        foreach ((string other, byte[] list) in Shortest)
        {
            if (other != name && (!alone || other == "lamps.csv"))
                source = source.With(other, list);
        }

        return source;
    }

    // A corpus file is called after its list: twin-lamps.csv, or lamps.csv in a folder.
    private static string NameOf(string file) => Path.GetFileName(file).Split('-')[^1];
}
