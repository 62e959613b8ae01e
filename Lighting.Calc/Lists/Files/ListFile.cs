namespace Lighting.Calc;

/// <summary>One list that can be opened.</summary>
/// <param name="Name">The list it is, such as <c>lamps.csv</c>.</param>
/// <param name="Label">Name in messages: its file name.</param>
/// <param name="Open">Opens it at its start.</param>
internal record ListFile(string Name, string Label, Func<Stream> Open)
{
    /// <summary>A file, which another program, such as a spreadsheet, may have open as well. Its bytes are read in one
    /// piece: no buffer is needed.</summary>
    /// <param name="name">The list it is.</param>
    /// <param name="path">The file.</param>
    public static ListFile At(string name, string path) =>
        new(
            name,
            Path.GetFileName(path),
            () =>
                new FileStream(
                    path,
                    FileMode.Open,
                    FileAccess.Read,
                    FileShare.ReadWrite | FileShare.Delete,
                    bufferSize: 0
                )
        );

    /// <summary>The bytes of a stream: one more than the limit when it is too large, and never more than that in
    /// memory.</summary>
    public static byte[] ReadUpToLimit(Stream stream, long most = ListLimits.Bytes + 1)
    {
        if (stream.CanSeek && stream.Position == 0 && stream.Length < most)
        {
            // The common case, without copies: the length is known, and that no byte follows tells that it was the
            // whole.
            var whole = new byte[stream.Length];
            int length = stream.ReadAtLeast(whole, whole.Length, throwOnEndOfStream: false);
            if (length == whole.Length && stream.ReadByte() < 0)
                return whole;
            stream.Position = 0;
        }

        using var memory = new MemoryStream();
        var buffer = new byte[64 * 1024];
        int read;
        while ((read = stream.Read(buffer, 0, (int)Math.Min(buffer.Length, most - memory.Length))) > 0)
            memory.Write(buffer, 0, read);
        return memory.ToArray();
    }

    /// <summary>The list as rows of text under known columns; null, with the faults logged, when it cannot be
    /// read.</summary>
    public virtual ListTable? Table(ListSchema schema, FaultLog log) => ListReader.Read(this, schema, log);

    /// <summary>The bytes of the list; null, with the fault logged, when it cannot be read or is too large.</summary>
    public byte[]? Read(FaultLog log)
    {
        byte[] bytes;
        try
        {
            using Stream stream = Open();
            bytes = ReadUpToLimit(stream);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            log.Fault(new ListFault { File = Label, Problem = $"cannot be read: {problem.Message}" });
            return null;
        }

        if (bytes.Length <= ListLimits.Bytes)
            return bytes;
        log.Fault(
            new ListFault
            {
                File = Label,
                Problem = $"is larger than {ListLimits.Bytes / 1024 / 1024} MiB, the limit of a list",
            }
        );
        return null;
    }
}
