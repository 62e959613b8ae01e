namespace Lighting.Calc;

/// <summary>Finds the lists of a folder, or takes a single file as one list.</summary>
internal static class ListPath
{
    /// <summary>The lists of a folder; a single file is a <c>lamps.csv</c>, or by its ending all lists as JSON or
    /// zipped.</summary>
    public static ListSource Open(string path, FaultLog log)
    {
        if (File.Exists(path))
            return HoldsAll(path) ? OpenAll(path, log) : OpenFile(path, ListSchema.Lamps, log);
        if (Directory.Exists(path))
            return OpenFolder(path, log);
        log.Fault(new ListFault { File = OneLine.Quoted(path), Problem = "there is no such file or folder" });
        return ListSource.Empty;
    }

    private static bool HoldsAll(string path) => Path.GetExtension(path).ToLowerInvariant() is ".json" or ".zip";

    private static ListSource OpenAll(string path, FaultLog log)
    {
        string label = Path.GetFileName(path);
        try
        {
            using Stream stream = ListFile.At(label, path).Open();
            byte[] bytes = ListFile.ReadUpToLimit(stream, WholeLists.MostBytes);
            return label.EndsWith('p') || label.EndsWith('P')
                ? ZippedLists.Of(bytes, label)
                : JsonLists.Of(bytes, label);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            log.Fault(new ListFault { File = label, Problem = $"cannot be read: {problem.Message}" });
            return ListSource.Empty;
        }
    }

    /// <summary>A single file, taken as the list it is asked to be.</summary>
    public static ListSource OpenFile(string path, ListSchema schema, FaultLog log)
    {
        string label = Path.GetFileName(path);
        if (!File.Exists(path))
        {
            log.Fault(
                new ListFault
                {
                    File = OneLine.Quoted(path),
                    Problem = Directory.Exists(path) ? "is a folder, not a list" : "there is no such file",
                }
            );
            return ListSource.Empty;
        }

        bool isAnother =
            !string.Equals(label, schema.File, StringComparison.OrdinalIgnoreCase)
            && ListSource.KnownNames.Contains(label, StringComparer.OrdinalIgnoreCase);
        if (isAnother)
        {
            log.Fault(
                new ListFault
                {
                    File = label,
                    Problem = $"is one list of a bike, not a {schema.File}",
                    Expected = "give its folder",
                }
            );
            return ListSource.Empty;
        }

        return ListSource.Empty.With(ListFile.At(schema.File, path));
    }

    private static ListSource OpenFolder(string path, FaultLog log)
    {
        ListSource source = ListSource.Empty;
        try
        {
            foreach (string file in Directory.EnumerateFiles(path).Order(StringComparer.Ordinal))
            {
                string label = Path.GetFileName(file);
                if (!label.EndsWith(".csv", StringComparison.OrdinalIgnoreCase))
                    continue;
                ListFile? same = source.Files.FirstOrDefault(f =>
                    string.Equals(f.Name, label, StringComparison.OrdinalIgnoreCase)
                );
                if (same is null)
                    source = source.With(ListFile.At(label, file));
                else
                    log.Fault(
                        new ListFault
                        {
                            File = label,
                            Problem = $"and '{same.Label}' are the same list",
                            Expected = "keep one of the two",
                        }
                    );
            }
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            log.Fault(new ListFault { File = OneLine.Quoted(path), Problem = $"cannot be read: {problem.Message}" });
        }

        return source;
    }
}
