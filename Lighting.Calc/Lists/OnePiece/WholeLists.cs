namespace Lighting.Calc;

/// <summary>All lists of a bike in one piece, told apart by how they begin: a zip archive, JSON, or else one
/// <c>lamps.csv</c>.</summary>
internal static class WholeLists
{
    /// <summary>The most bytes that are read of any of them.</summary>
    public static int MostBytes => Math.Max(JsonLists.MostBytes, ZippedLists.MostBytes);

    /// <summary>The lists that bytes hold.</summary>
    /// <param name="bytes">All of it, or one byte more than is allowed.</param>
    /// <param name="label">Name in messages; null where it has none.</param>
    public static ListSource Of(byte[] bytes, string? label) =>
        ZippedLists.Begins(bytes) ? ZippedLists.Of(bytes, label ?? ZippedLists.Label)
        : BeginsAsJson(bytes) ? JsonLists.Of(bytes, label ?? JsonLists.Label)
        : ListSource.Empty.With(ListSchema.Lamps.File, bytes);

    /// <summary>The lists that the bytes of a stream hold, which is read up to a limit.</summary>
    public static async Task<ListSource> ReadAsync(
        Stream stream,
        int most,
        Func<byte[], ListSource> sourceOf,
        CancellationToken cancellationToken
    )
    {
        using var memory = new MemoryStream();
        var buffer = new byte[64 * 1024];
        int read;
        do
        {
            Memory<byte> room = buffer.AsMemory(0, (int)Math.Min(buffer.Length, most - memory.Length));
            read = await stream.ReadAsync(room, cancellationToken).ConfigureAwait(false);
            memory.Write(buffer, 0, read);
        } while (read > 0);
        return sourceOf(memory.ToArray());
    }

    private static bool BeginsAsJson(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith("\uFEFF"u8))
            bytes = bytes[3..];
        bytes = bytes.TrimStart(" \t\r\n"u8);
        return !bytes.IsEmpty && bytes[0] is (byte)'{' or (byte)'[';
    }
}
