namespace Lighting.Calc.Cli.Commands;

/// <summary>The bikes that paths stand for.</summary>
internal static class FleetFolders
{
    private const string Lamps = "lamps.csv";
    private static readonly EnumerationOptions s_anyCase = new()
    {
        MatchCasing = MatchCasing.CaseInsensitive,
        IgnoreInaccessible = true,
    };

    // What may not be read is told where its lists are read.
    private static readonly EnumerationOptions s_everyFolder = new()
    {
        IgnoreInaccessible = true,
        AttributesToSkip = FileAttributes.None,
    };

    /// <summary>Whether a path is a folder of bikes: one without a lamps.csv whose sub-folders have one.</summary>
    public static bool HoldsBikes(string path) =>
        Directory.Exists(path)
        && !Has(path, Lamps)
        && Directory.EnumerateDirectories(path, "*", s_everyFolder).Any(folder => Has(folder, Lamps));

    /// <summary>Every bike in the order given; the sub-folders of a folder of bikes in the order of their
    /// names.</summary>
    public static IEnumerable<FleetFolder> Of(IEnumerable<string> paths)
    {
        foreach (string path in paths)
        {
            if (!HoldsBikes(path))
            {
                yield return new FleetFolder(path, IsGiven: true);
                continue;
            }

            string[] folders =
            [
                .. Directory.EnumerateDirectories(path, "*", s_everyFolder).Order(StringComparer.Ordinal),
            ];
            foreach (string folder in folders)
                yield return new FleetFolder(folder, IsGiven: false);
        }
    }

    /// <summary>Whether a sub-folder is meant as a bike: it holds some list. A folder of photographs does
    /// not.</summary>
    public static bool IsMeantAsBike(FleetFolder folder) => folder.IsGiven || Has(folder.Path, "*.csv");

    private static bool Has(string folder, string pattern) =>
        Directory.EnumerateFiles(folder, pattern, s_anyCase).Any();
}
