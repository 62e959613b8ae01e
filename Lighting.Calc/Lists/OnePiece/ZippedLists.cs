using System.IO.Compression;

namespace Lighting.Calc;

/// <summary>The lists of a bike as one zip archive, in its root or in one folder of it.</summary>
internal static class ZippedLists
{
    private const int Bytes = 16 * 1024 * 1024;
    private const int Entries = 1000;

    /// <summary>The most bytes that are read of it: one more than it may have.</summary>
    public const int MostBytes = Bytes + 1;

    /// <summary>Name of the archive in messages where it has no file.</summary>
    public const string Label = "ZIP";

    /// <summary>Whether bytes begin as an archive does.</summary>
    public static bool Begins(ReadOnlySpan<byte> bytes) =>
        bytes.StartsWith("PK\u0003\u0004"u8) || bytes.StartsWith("PK\u0005\u0006"u8);

    /// <summary>The lists that an archive holds, or what is wrong with it as a whole. Files that are no lists are not
    /// read.</summary>
    public static ListSource Of(byte[] bytes, string label)
    {
        var log = new FaultLog();
        if (bytes.Length > Bytes)
            return Refused($"is larger than {Bytes / 1024 / 1024} MiB, the limit of a bike");
        try
        {
            using var archive = new ZipArchive(new MemoryStream(bytes, writable: false));
            ZipArchiveEntry[] lists = [.. archive.Entries.Where(IsList)];
            if (lists.Length > Entries)
                return Refused($"holds more than {Entries} lists");
            if (lists.Select(FolderOf).Distinct(StringComparer.Ordinal).Skip(1).Any())
                return Refused("holds lists in several folders", "zip the lists of one bike");
            ListSource source = ListSource.Empty;
            foreach (ZipArchiveEntry entry in lists)
                source = source.With(entry.Name, Contents(entry));
            return source;
        }
        catch (Exception wrong) when (wrong is InvalidDataException or NotSupportedException or IOException)
        {
            return Refused("is not a zip archive that can be read", "zip the lists again, without a password");
        }

        ListSource Refused(string problem, string? expected = null)
        {
            log.Fault(
                new ListFault
                {
                    File = label,
                    Problem = problem,
                    Expected = expected,
                }
            );
            return ListSource.Refused(log);
        }
    }

    // A list that a bike does not have is named in a caution and not read.
    private static byte[] Contents(ZipArchiveEntry entry)
    {
        if (!ListSource.KnownNames.Contains(entry.Name, Name.Comparer))
            return [];
        using Stream stream = entry.Open();
        return ListFile.ReadUpToLimit(stream);
    }

    // The folder that one kind of desktop adds to its archives holds no lists.
    private static bool IsList(ZipArchiveEntry entry) =>
        entry.Name.EndsWith(".csv", StringComparison.OrdinalIgnoreCase)
        && !entry.FullName.StartsWith("__MACOSX/", StringComparison.Ordinal);

    private static string FolderOf(ZipArchiveEntry entry) => entry.FullName[..^entry.Name.Length];
}
