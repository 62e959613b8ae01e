using Lighting.Calc.Lists;

namespace Lighting.Calc.Benchmarks;

/// <summary>The lists that fuzzing starts from, and a bike around one that was mutated.</summary>
internal sealed class ListCorpus(string folder)
{
    public (string Name, byte[] Text)[] Lists { get; } =
        [.. Directory.GetFiles(folder, "*.csv", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(f => (NameOf(f), File.ReadAllBytes(f)))];

    /// <summary>The other lists of the corpus beside the one given, the first of each name; or, alone, just its lamps.</summary>
    public ListSource Around(string name, byte[] text, bool alone)
    {
        ListSource source = ListSource.Empty.With(name, text);
        var named = new HashSet<string> { name };
        foreach ((string other, byte[] list) in Lists)
        {
            if ((!alone || other == "lamps.csv") && named.Add(other))
                source = source.With(other, list);
        }

        return source;
    }

    // A corpus file is called after its list: twin-lamps.csv, or lamps.csv in a folder.
    private static string NameOf(string file) => Path.GetFileName(file).Split('-')[^1];
}
