namespace Lighting.Calc;

/// <summary>Scratch arrays of whole numbers, cut one after the other from a single block, which is on the stack unless
/// a circuit is large.</summary>
internal ref struct Scratch(Span<int> room)
{
    /// <summary>The most numbers that are put on the stack.</summary>
    public const int OnStack = 1024;

    private Span<int> rest = room;

    /// <summary>The next numbers, all of them zero.</summary>
    public Span<int> Take(int count)
    {
        Span<int> taken = rest[..count];
        rest = rest[count..];
        return taken;
    }

    /// <summary>The next numbers, all of them one value.</summary>
    public Span<int> Take(int count, int value)
    {
        Span<int> taken = Take(count);
        taken.Fill(value);
        return taken;
    }
}
