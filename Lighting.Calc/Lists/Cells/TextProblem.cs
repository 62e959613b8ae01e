using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Reason why a text is refused, with the form expected.</summary>
/// <param name="Text">The offending text.</param>
/// <param name="Problem">What is wrong with it, to follow the text: <c>is not a number of watts</c>.</param>
/// <param name="Expected">What to write instead; null where <see cref="Problem"/> says it all.</param>
/// <param name="Nearest">Known words close to the text, closest first; empty if there is none.</param>
internal sealed record TextProblem(string Text, string Problem, string? Expected, ImmutableArray<string> Nearest)
{
    internal TextProblem(string text, string problem, string? expected)
        : this(text, problem, expected, []) { }

    /// <summary>The problem in one line: <c>'55,0' is not a number of watts; write a decimal point: 55.0</c>.</summary>
    public override string ToString() => OneLine.Of(Text, Problem, Expected, Nearest);
}
