using System.Diagnostics;
using System.Text;

namespace Lighting.Calc.Cli.Commands;

/// <summary>Where rows go as they come: only whole rows are ever passed on.</summary>
/// <remarks>A file is written beside its target and renamed at the end, so that an earlier one stays until then, and
/// for good when the work is stopped.</remarks>
internal sealed class RowOutput : IDisposable
{
    // A pipe takes up to 4096 bytes whole or not at all (POSIX, PIPE_BUF): one that ends while it waits for its reader
    // has written no half row.
    private const int EnoughCharacters = 3 * 1024;
    private static readonly TimeSpan s_longestWait = TimeSpan.FromMilliseconds(200);

    private readonly StringWriter _rows = new();
    private readonly TextWriter _output;
    private readonly string? _path;
    private readonly string _temporary;
    private long _passedOn = Stopwatch.GetTimestamp();
    private bool _isComplete;

    private RowOutput(TextWriter output, string? path, string temporary)
    {
        _output = output;
        _path = path;
        _temporary = temporary;
    }

    /// <summary>Takes the text of a row, or of several.</summary>
    public TextWriter Rows => _rows;

    /// <exception cref="InputException">The file cannot be written.</exception>
    public static RowOutput Open(string? path, TextWriter standardOutput)
    {
        if (path is null)
            return new RowOutput(standardOutput, null, "");
        string temporary = $"{Path.GetFullPath(path)}.{Path.GetRandomFileName()}.tmp";
        try
        {
            return new RowOutput(
                new StreamWriter(temporary, append: false, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)),
                path,
                temporary
            );
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw CannotWrite(path, problem);
        }
    }

    /// <summary>Says that the rows taken so far are whole.</summary>
    /// <exception cref="InputException">They cannot be written.</exception>
    /// <exception cref="IOException">The reader has closed the pipe: <see cref="ClosedPipe"/>.</exception>
    public void EndRow()
    {
        if (_rows.GetStringBuilder().Length >= EnoughCharacters || Stopwatch.GetElapsedTime(_passedOn) > s_longestWait)
            PassOn();
    }

    /// <summary>Passes on what is left, and puts the file in its place.</summary>
    /// <exception cref="InputException">It cannot be written.</exception>
    public void Complete()
    {
        PassOn();
        _isComplete = true;
        if (_path is null)
            return;
        try
        {
            _output.Dispose();
            File.Move(_temporary, Path.GetFullPath(_path), overwrite: true);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            _isComplete = false;
            throw CannotWrite(_path, problem);
        }
    }

    public void Dispose()
    {
        if (_isComplete)
            return;
        if (_path is null)
        {
            PassOn();
            return;
        }

        _output.Dispose();
        if (File.Exists(_temporary))
            File.Delete(_temporary);
    }

    private static InputException CannotWrite(string? path, Exception problem) =>
        new(
            path is null
                ? $"the output was closed before the last row: {problem.Message}"
                : $"--out '{path}' cannot be written: {problem.Message}"
        )
        {
            IsOfOutput = true,
        };

    private void PassOn()
    {
        StringBuilder rows = _rows.GetStringBuilder();
        string whole = rows.ToString();
        rows.Clear();
        _passedOn = Stopwatch.GetTimestamp();
        try
        {
            _output.Write(whole);
            _output.Flush();
        }
        catch (Exception problem)
            when (problem is IOException or UnauthorizedAccessException && !ClosedPipe.Is(problem))
        {
            throw CannotWrite(_path, problem);
        }
    }
}
