using System.CommandLine;
using System.CommandLine.Parsing;

namespace Lighting.Calc.Cli.Commands;

/// <summary>Keeps a result from replacing what it was made from.</summary>
internal static class InputGuard
{
    /// <summary>Refuses a target that is one of the files given, or a list within one of the folders given, by whatever
    /// path or link it is named.</summary>
    /// <param name="parsed">The words of the command; every one but the target that names a file or folder is an
    /// input.</param>
    /// <param name="outOption">The option that names the target.</param>
    /// <exception cref="InputException">The target is an input.</exception>
    public static void Check(ParseResult parsed, Option<string?> outOption)
    {
        if (parsed.GetValue(outOption) is not { Length: > 0 } path || ResultFile.IsDevice(Path.GetFullPath(path)))
            return;
        string target = RealPath(path);
        // The list to fill in may go where it belongs, as long as none is there.
        bool isNewSheet =
            parsed.CommandResult.Command.Name == "readings"
            && Path.GetFileName(target).Equals("readings.csv", StringComparison.OrdinalIgnoreCase)
            && !File.Exists(target);
        bool isList =
            !isNewSheet && ListSource.KnownNames.Contains(Path.GetFileName(target), StringComparer.OrdinalIgnoreCase);
        foreach (
            string input in parsed
                .CommandResult.Children.Where(c => c is not OptionResult { Option: var option } || option != outOption)
                .SelectMany(c => c.Tokens)
                .Select(t => t.Value)
        )
            if (
                File.Exists(input) && Same(RealPath(input), target)
                || isList && Directory.Exists(input) && IsWithin(target, RealPath(input))
            )
                throw new InputException($"--out '{path}' is one of the lists that are read; name another file.")
                {
                    IsOfOutput = true,
                };
    }

    private static bool Same(string a, string b) =>
        string.Equals(a, b, OperatingSystem.IsLinux() ? StringComparison.Ordinal : StringComparison.OrdinalIgnoreCase);

    private static bool IsWithin(string file, string folder)
    {
        for (string? at = Path.GetDirectoryName(file); at is not null; at = Path.GetDirectoryName(at))
            if (Same(at, folder))
                return true;
        return false;
    }

    // Every link on the way is followed, also of a file that is not there yet.
    private static string RealPath(string path)
    {
        string full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        if (Path.GetDirectoryName(full) is not { } parent)
            return full;
        string real = Path.Combine(RealPath(parent), Path.GetFileName(full));
        FileSystemInfo info = Directory.Exists(real) ? new DirectoryInfo(real) : new FileInfo(real);
        try
        {
            return info.LinkTarget is null ? real : info.ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? real;
        }
        catch (IOException)
        {
            // A link that leads round is no file, and writing to it says so.
            return real;
        }
    }
}
