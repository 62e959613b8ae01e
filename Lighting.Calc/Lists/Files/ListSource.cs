using System.Collections.Immutable;
using System.Text;

namespace Lighting.Calc;

/// <summary>Source of a bike's lists: a folder, a file, or texts and streams in memory. Immutable.</summary>
/// <remarks>All sources use the same reader, so that a list gives the same result from each.</remarks>
public sealed class ListSource
{
    private ListSource(ImmutableArray<ListFile> files) => Files = files;

    /// <summary>An empty source, to which lists are added.</summary>
    public static ListSource Empty { get; } = new([]);

    /// <summary>The names of the lists a bike may have, <c>bike.csv</c> first.</summary>
    public static ImmutableArray<string> KnownNames { get; } = [.. ListSchema.All.Select(s => s.File)];

    internal ImmutableArray<ListFile> Files { get; }

    /// <summary>The same lists and one more, from text.</summary>
    /// <param name="name">Name of the list, such as <c>lamps.csv</c>.</param>
    /// <param name="text">The list.</param>
    /// <exception cref="ArgumentNullException">The text or the name is null.</exception>
    /// <exception cref="ArgumentException">The name is empty or there is a list of this name already, or the text is
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
    /// <exception cref="ArgumentException">The name is empty or there is a list of this name already.</exception>
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
    /// <exception cref="ArgumentException">The name is empty or there is a list of this name already.</exception>
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
    /// <exception cref="ArgumentException">The name is empty or there is a list of this name already, or the text is
    /// not valid UTF-16.</exception>
    public ListSource With(string name, TextReader reader)
    {
        ArgumentNullException.ThrowIfNull(reader);
        var buffer = new char[ListLimits.Bytes + 1];
        int length = reader.ReadBlock(buffer, 0, buffer.Length);
        return With(name, new string(buffer, 0, length));
    }

    internal ListSource With(ListFile file)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(file.Name);
        if (Files.Any(f => string.Equals(f.Name, file.Name, StringComparison.OrdinalIgnoreCase)))
            throw new ArgumentException($"There are two lists named '{file.Name}'.", nameof(file));
        return new ListSource(Files.Add(file));
    }
}
