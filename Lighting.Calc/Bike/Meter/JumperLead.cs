namespace Lighting.Calc;

/// <summary>A fused jumper lead between two points, its fuse no larger than that of the circuit.</summary>
/// <param name="From">The point at one end.</param>
/// <param name="To">The point at the other end.</param>
public sealed record JumperLead(string From, string To)
{
    internal const string Word = " to ";

    /// <summary>As lists have it: <c>battery + to tail feed</c>.</summary>
    public override string ToString() => From + Word + To;

    /// <summary>The points of a text, where " to " may be within a point's name.</summary>
    internal static JumperLead? Of(string text, Func<string, bool> isPoint)
    {
        for (
            int at = text.IndexOf(Word, StringComparison.OrdinalIgnoreCase);
            at > 0;
            at = text.IndexOf(Word, at + 1, StringComparison.OrdinalIgnoreCase)
        )
            if (
                text[..at].Trim() is var from
                && text[(at + Word.Length)..].Trim() is var to
                && isPoint(from)
                && isPoint(to)
                && !Name.Equal(from, to)
            )
                return new JumperLead(from, to);
        return null;
    }
}
