using System.Collections.Immutable;
using System.Text;

namespace Lighting.Calc;

/// <summary>Source of a bike's lists: a folder, a file, or texts and streams in memory. Immutable.</summary>
/// <remarks>All sources use the same reader, so that a list gives the same result from each.</remarks>
public sealed class ListSource
{
    private ListSource(ImmutableArray<ListFile> files, ImmutableArray<ListFault> faults, bool isJson) =>
        (Files, Faults, IsJson) = (files, faults, isJson);

    /// <summary>An empty source, to which lists are added.</summary>
    public static ListSource Empty { get; } = new([], [], isJson: false);

    /// <summary>An empty source of lists that are keys of JSON.</summary>
    internal static ListSource OfJson { get; } = new([], [], isJson: true);

    /// <summary>The names of the lists a bike may have, <c>bike.csv</c> first.</summary>
    public static ImmutableArray<string> KnownNames { get; } = [.. ListSchema.All.Select(s => s.File)];

    internal ImmutableArray<ListFile> Files { get; }

    // What is wrong with the source as a whole.
    private ImmutableArray<ListFault> Faults { get; }

    private bool IsJson { get; }

    /// <summary>The lists of a bike as one JSON object: <c>{"bike": {"system voltage": "12 V"}, "lamps": [{"lamp":
    /// "tail",
    /// "circuit": "rear", "code": "R5W"}]}</c>.</summary>
    /// <remarks>
    /// Its keys are the lists without <c>.csv</c>; each is an array with an object a row, whose keys are the columns;
    /// <c>bike</c>
    /// is one object of its items. Values are the texts of cells, units included; numbers, true (<c>yes</c>), false and
    /// null
    /// (blank) are accepted. What is wrong with it is a fault when it is read, never an exception. At most 16 MiB.
    /// </remarks>
    /// <param name="text">The JSON.</param>
    /// <exception cref="ArgumentNullException">The text is null.</exception>
    /// <exception cref="ArgumentException">The text is not valid UTF-16.</exception>
    public static ListSource FromJson(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return JsonLists.Of(new UTF8Encoding(false, true).GetBytes(text), JsonLists.Label);
    }

    /// <summary>The same JSON from a stream, such as the body of a request, which is read to its end or to the size
    /// limit, and left open.</summary>
    /// <param name="stream">The JSON, UTF-8.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    /// <exception cref="ArgumentNullException">The stream is null.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static Task<ListSource> FromJsonAsync(Stream stream, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(stream);
        cancellationToken.ThrowIfCancellationRequested();
        return WholeLists.ReadAsync(
            stream,
            JsonLists.MostBytes,
            bytes => JsonLists.Of(bytes, JsonLists.Label),
            cancellationToken
        );
    }

    /// <summary>All lists of a bike in one stream, which is read to its end or to the size limit, and left open: a zip
    /// archive of its CSV lists, JSON as in <see cref="FromJson(string)"/>, or else one <c>lamps.csv</c>, told apart by
    /// how it begins.</summary>
    /// <remarks>The lists of an archive are in its root or in one folder. What is wrong with it is a fault when it is
    /// read. At most 16 MiB.</remarks>
    /// <param name="stream">The lists.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    /// <exception cref="ArgumentNullException">The stream is null.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static Task<ListSource> FromStreamAsync(Stream stream, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(stream);
        cancellationToken.ThrowIfCancellationRequested();
        return WholeLists.ReadAsync(
            stream,
            WholeLists.MostBytes,
            bytes => WholeLists.Of(bytes, label: null),
            cancellationToken
        );
    }

    /// <summary>A source without lists that has faults.</summary>
    internal static ListSource Refused(FaultLog log) => Empty.WithFaults(log);

    /// <summary>The same lists and one more, from text.</summary>
    /// <param name="name">Name of the list, such as <c>lamps.csv</c>.</param>
    /// <param name="text">The list.</param>
    /// <exception cref="ArgumentNullException">The text or the name is null.</exception>
    /// <exception cref="ArgumentException">The name is empty, or the text is
    /// not valid UTF-16.</exception>
    public ListSource With(string name, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return With(name, new UTF8Encoding(false, true).GetBytes(text));
    }

    /// <summary>The same lists and one more, from the bytes of a UTF-8 file, which must not change
    /// afterwards.</summary>
    /// <param name="name">Name of the list, such as <c>lamps.csv</c>.</param>
    /// <param name="bytes">The list.</param>
    /// <exception cref="ArgumentNullException">The bytes or the name are null.</exception>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    public ListSource With(string name, byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        return With(new ListFile(name, name, () => new MemoryStream(bytes, writable: false)));
    }

    /// <summary>The same lists and one more, from a stream, which is read here, to its end or to the size limit, and
    /// left open.</summary>
    /// <param name="name">Name of the list, such as <c>lamps.csv</c>.</param>
    /// <param name="stream">The list, UTF-8.</param>
    /// <exception cref="ArgumentNullException">The stream or the name is null.</exception>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    public ListSource With(string name, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        return With(name, ListFile.ReadUpToLimit(stream));
    }

    /// <summary>The same lists and one more, from a reader, which is read here, to its end or to the size limit, and
    /// left open.</summary>
    /// <param name="name">Name of the list, such as <c>lamps.csv</c>.</param>
    /// <param name="reader">The list.</param>
    /// <exception cref="ArgumentNullException">The reader or the name is null.</exception>
    /// <exception cref="ArgumentException">The name is empty, or the text is
    /// not valid UTF-16.</exception>
    public ListSource With(string name, TextReader reader)
    {
        ArgumentNullException.ThrowIfNull(reader);
        var buffer = new char[ListLimits.Bytes + 1];
        int length = reader.ReadBlock(buffer, 0, buffer.Length);
        return With(name, new string(buffer, 0, length));
    }

    /// <summary>The same lists and one more, from a stream, such as a file of a request, which is read to its end or to
    /// the size limit, and left open.</summary>
    /// <param name="name">Name of the list, such as <c>lamps.csv</c>. A second list of one name is a fault when the
    /// lists are read.</param>
    /// <param name="stream">The list, UTF-8.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    /// <exception cref="ArgumentNullException">The stream or the name is null.</exception>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public Task<ListSource> WithAsync(string name, Stream stream, CancellationToken cancellationToken = default)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentNullException.ThrowIfNull(stream);
        cancellationToken.ThrowIfCancellationRequested();
        return WholeLists.ReadAsync(stream, ListLimits.Bytes + 1, bytes => With(name, bytes), cancellationToken);
    }

    internal ListSource With(ListFile file)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(file.Name);
        if (
            Files.FirstOrDefault(f => string.Equals(f.Name, file.Name, StringComparison.OrdinalIgnoreCase))
            is not { } same
        )
            return new ListSource(Files.Add(file), Faults, IsJson);
        var twice = new ListFault
        {
            File = file.Label,
            Problem = file.Label == same.Label ? "is given twice" : $"and '{same.Label}' are the same list",
            Expected = "keep one of the two",
        };
        return new ListSource(Files, Faults.Add(twice), IsJson);
    }

    /// <summary>The same lists and what is wrong with them as a whole.</summary>
    internal ListSource WithFaults(FaultLog log) => new(Files, [.. Faults, .. log.Faults], IsJson);

    /// <summary>The name of a list in messages.</summary>
    internal string NameOf(ListSchema schema) => IsJson ? JsonLists.KeyOf(schema) : schema.File;

    /// <summary>The line of the header: the first, or none in JSON.</summary>
    internal int HeaderLine => IsJson ? 0 : 1;

    /// <summary>Logs what is wrong with the source as a whole.</summary>
    internal void LogFaults(FaultLog log)
    {
        foreach (ListFault fault in Faults)
            log.Fault(fault);
    }
}
