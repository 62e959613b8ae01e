using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>The rows of a <see cref="ShortList"/> with what is known of the supply, and their words.</summary>
/// <param name="List">The rows.</param>
/// <param name="GroupOf">For each hypothesis the number of the group in which no test tells it from the others.</param>
/// <param name="SupplyMean">What the likeliest fault says of the supply's voltage, as a share above the list's.</param>
/// <param name="SupplyVariance">Variance of <paramref name="SupplyMean"/>.</param>
/// <param name="Named">Names a hypothesis, with the probability given.</param>
internal sealed record Hypotheses(
    ShortList List,
    ImmutableArray<int> GroupOf,
    double SupplyMean,
    double SupplyVariance,
    Func<int, double, FaultExplanation> Named
)
{
    /// <summary>Number of groups.</summary>
    public int Groups { get; } = GroupOf.Max() + 1;
}
