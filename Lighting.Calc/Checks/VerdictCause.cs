using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>One cause for which a bike does not suit, however many parts it concerns.</summary>
public sealed class VerdictCause
{
    // A line of 80 columns, behind a number.
    internal const int LongestText = 77;

    internal VerdictCause(string text, string? remedy, ImmutableArray<Finding> findings) =>
        (Text, Remedy, Findings) = (text, remedy, findings);

    /// <summary>The cause in one sentence of at most 77 characters: the part first, its figure second, the limit third;
    /// long lists of parts are shortened.</summary>
    public string Text { get; }

    /// <summary>The remedy, a sentence; null where none can be calculated.</summary>
    public string? Remedy { get; }

    /// <summary>The findings that it sums up; empty for a further cause of one fuse.</summary>
    public ImmutableArray<Finding> Findings { get; }
}
