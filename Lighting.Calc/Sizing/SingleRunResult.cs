using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>The size for a single run.</summary>
public sealed class SingleRunResult
{
    internal SingleRunResult() { }

    /// <summary>Every listed size with its numbers, thinnest first.</summary>
    internal ImmutableArray<SingleRunCandidate> Candidates { get; init; }

    /// <summary>The thinnest that holds every limit; null when none does.</summary>
    public WireSize? Chosen { get; internal init; }

    /// <summary>What keeps it from being one size thinner; null when none holds.</summary>
    internal SizingConstraint? Limit { get; init; }

    /// <summary>The same in words; when none holds, what fails with the thickest and by how much.</summary>
    public string Explanation { get; internal init; } = null!;

    /// <summary>The chosen size (or, when none holds, the thickest) with its neighbours.</summary>
    internal ImmutableArray<SingleRunCandidate> Neighbours(int each = 2)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(each);
        int at = Chosen is { } chosen
            ? Candidates.IndexOf(Candidates.First(c => c.Wire == chosen))
            : Candidates.Length - 1;
        return [.. Candidates.Where((_, i) => Math.Abs((long)i - at) <= each)];
    }
}
