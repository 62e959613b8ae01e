using System.Text;

namespace Lighting.Calc.Cli.Commands;

/// <summary>Writes a result to a file so that there is never half of one, and an earlier one stays until the new one is
/// whole.</summary>
internal static class ResultFile
{
    private static readonly UTF8Encoding s_utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Writes a file, or to the device or pipe of that name.</summary>
    /// <param name="path">As the option says it.</param>
    /// <param name="text">The whole result.</param>
    /// <exception cref="InputException">The file cannot be written; an earlier one is as it was.</exception>
    public static void Write(string path, string text)
    {
        try
        {
            string target = Path.GetFullPath(path);
            // What a link points to is what is meant.
            if (!IsDevice(target) && new FileInfo(target) is { LinkTarget: not null } link)
                target = link.ResolveLinkTarget(returnFinalTarget: true)!.FullName;
            if (!WrittenInPlace(target, text))
                WriteBeside(target, text);
        }
        catch (Exception problem)
            when (problem is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new InputException($"--out '{path}' cannot be written: {problem.Message}") { IsOfOutput = true };
        }
    }

    /// <summary>Whether a path names a device or another file of the system's own making, which must never be replaced
    /// by a file.</summary>
    internal static bool IsDevice(string fullPath) =>
        fullPath.StartsWith(@"\\.\", StringComparison.Ordinal)
        || fullPath.StartsWith("/proc/", StringComparison.Ordinal)
        || (
            fullPath.StartsWith("/dev/", StringComparison.Ordinal)
            && !fullPath.StartsWith("/dev/shm/", StringComparison.Ordinal)
        );

    // A device or a pipe is written as it is. Opening what is there also finds a file that may not be changed.
    private static bool WrittenInPlace(string target, string text)
    {
        if (!IsDevice(target) && !File.Exists(target))
            return false;
        using var there = new FileStream(target, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
        if (there.CanSeek && !IsDevice(target))
            return false;
        there.Write(s_utf8.GetBytes(text));
        return true;
    }

    private static void WriteBeside(string target, string text)
    {
        if (!Directory.Exists(Path.GetDirectoryName(target)))
            throw new DirectoryNotFoundException("there is no such folder.");
        if (Directory.Exists(target))
            throw new IOException("it is a folder.");
        string temporary = $"{target}.{Path.GetRandomFileName()}.tmp";
        try
        {
            File.WriteAllText(temporary, text, s_utf8);
            if (!OperatingSystem.IsWindows() && File.Exists(target))
                File.SetUnixFileMode(temporary, File.GetUnixFileMode(target));
            File.Move(temporary, target, overwrite: true);
        }
        catch
        {
            File.Delete(temporary);
            throw;
        }
    }
}
