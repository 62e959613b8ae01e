namespace Lighting.Calc.Cli.Commands;

/// <summary>Writes lists into a folder, all or none, and never over a list that is there.</summary>
internal static class NewFolder
{
    /// <summary>Refuses a path that is a file, or a folder with lists.</summary>
    /// <param name="path">As it is typed.</param>
    /// <exception cref="InputException">Nothing may be written there.</exception>
    public static void Check(string path)
    {
        if (File.Exists(path))
            throw new InputException($"'{path}' is a file; name a folder.");
        if (!Directory.Exists(path))
            return;
        string[] there =
        [
            .. Directory
                .EnumerateFiles(path)
                .Select(f => Path.GetFileName(f))
                .Where(f => ListSource.KnownNames.Contains(f, StringComparer.OrdinalIgnoreCase))
                .Order(StringComparer.Ordinal),
        ];
        if (there.Length > 0)
            throw new InputException($"'{path}' has lists already: {string.Join(", ", there)}; name another folder.");
    }

    /// <summary>Writes lists: each beside its place first, then all into their places.</summary>
    /// <param name="path">As it is typed.</param>
    /// <param name="lists">The text of each by its name.</param>
    /// <exception cref="InputException">A list cannot be written; the folder is as it was.</exception>
    public static void Write(string path, IReadOnlyDictionary<string, string> lists)
    {
        Check(path);
        bool isNew = !Directory.Exists(path);
        var written = new List<string>();
        try
        {
            string folder = Directory.CreateDirectory(path).FullName;
            string suffix = $".{Path.GetRandomFileName()}.tmp";
            foreach ((string name, string text) in lists)
            {
                written.Add(Path.Combine(folder, name + suffix));
                File.WriteAllText(written[^1], text);
            }

            foreach (string name in lists.Keys)
            {
                string place = Path.Combine(folder, name);
                File.Move(place + suffix, place, overwrite: false);
                written.Add(place);
            }
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            foreach (string file in written)
                File.Delete(file);
            if (isNew && Directory.Exists(path))
                Directory.Delete(path);
            throw new InputException($"'{path}' cannot be written: {problem.Message}");
        }
    }
}
