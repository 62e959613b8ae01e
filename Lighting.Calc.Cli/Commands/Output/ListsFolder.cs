using System.CommandLine;
using System.Text;

namespace Lighting.Calc.Cli.Commands;

/// <summary>A folder that a bike is written to as lists: never over a list, and whole or not at all.</summary>
internal sealed class ListsFolder
{
    private readonly Option<string?> _folder;

    public ListsFolder(Command command, string what)
    {
        _folder = new Option<string?>("--lists")
        {
            Description = $"A folder without lists, to write {what} to as lists.",
            HelpName = "FOLDER",
        };
        _folder.Validators.Add(OptionText.RefuseEmptyPath);
        command.Add(_folder);
    }

    /// <summary>Whether a folder was given, with no list in it.</summary>
    /// <exception cref="InputException">There is a list in it, or it is a file.</exception>
    public bool IsGiven(ParseResult parsed)
    {
        if (parsed.GetValue(_folder) is not { } folder)
            return false;
        if (File.Exists(folder))
            throw new InputException($"--lists '{folder}' is a file; name a folder.");
        if (Directory.Exists(folder) && ListIn(folder) is { } list)
            throw new InputException(
                $"--lists '{folder}' has a {list} already, and no list is written over: name " + $"another."
            );
        return true;
    }

    /// <summary>Writes the lists of a bike, if a folder was given.</summary>
    /// <exception cref="InputException">There is a list in it, or it cannot be written: then nothing is left in
    /// it.</exception>
    public void Write(ParseResult parsed, CommandConsole console, BikeLists lists)
    {
        if (!IsGiven(parsed))
            return;
        string folder = parsed.GetValue(_folder)!;
        var written = new List<string>();
        try
        {
            Directory.CreateDirectory(folder);
            // All of them beside their places first, so that a full disk leaves none.
            (string From, string To)[] files =
            [
                .. BikeListsWriter
                    .Write(lists)
                    .Select(l =>
                        (
                            Path.Combine(folder, $"{l.Key}.{Path.GetRandomFileName()}" + $".tmp"),
                            Path.Combine(folder, l.Key)
                        )
                    ),
            ];
            foreach ((string text, (string from, _)) in BikeListsWriter.Write(lists).Values.Zip(files))
            {
                written.Add(from);
                File.WriteAllText(from, text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
            }

            foreach ((string from, string to) in files)
            {
                File.Move(from, to, overwrite: false);
                written.Add(to);
            }
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            written.ForEach(File.Delete);
            throw new InputException($"--lists '{folder}' cannot be written: {problem.Message}");
        }

        console.Errors.WriteLine($"lighting-calc: the bike is in '{folder}': check it with 'check {folder}'.");
    }

    private static string? ListIn(string folder) =>
        Directory
            .EnumerateFiles(folder)
            .Select(f => Path.GetFileName(f))
            .FirstOrDefault(f => ListSource.KnownNames.Contains(f, StringComparer.OrdinalIgnoreCase));
}
