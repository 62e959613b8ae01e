using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Reason why a text is refused, with the form expected.</summary>
internal sealed record TextProblem
{
    internal TextProblem(string text, string problem, string? expected, ImmutableArray<string> nearest) =>
        (Text, Problem, Expected, Nearest) = (text, problem, expected, nearest);

    /// <summary>The offending text.</summary>
    public string Text { get; }

    /// <summary>What is wrong with it, to follow the text: <c>is not a number of watts</c>.</summary>
    public string Problem { get; }

    /// <summary>What to write instead; null where <see cref="Problem"/> says it all.</summary>
    public string? Expected { get; }

    /// <summary>Known words close to the text, closest first; empty if there is none.</summary>
    public ImmutableArray<string> Nearest { get; }

    internal TextProblem(string text, string problem, string? expected)
        : this(text, problem, expected, []) { }

    /// <summary>The problem in one line: <c>'55,0' is not a number of watts; write a decimal point: 55.0</c>.</summary>
    public override string ToString() => OneLine.Of(Text, Problem, Expected, Nearest);

    /// <inheritdoc/>
    public bool Equals(TextProblem? other) =>
        other is not null
        && (Text, Problem, Expected) == (other.Text, other.Problem, other.Expected)
        && Nearest.HoldsSame(other.Nearest);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Text, Problem);
}
