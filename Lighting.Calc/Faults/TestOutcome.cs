using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>One outcome of a test and what it would mean.</summary>
public sealed class TestOutcome
{
    internal TestOutcome(string outcome, double probability, ImmutableArray<FaultExplanation> faults, string meaning) =>
        (Outcome, Probability, Faults, Meaning) = (outcome, probability, faults, meaning);

    /// <summary>The reading, such as <c>0 V to 0.3 V</c> or <c>dim</c>; numbers of a healthy bike end in
    /// <c>normal</c>.</summary>
    public string Outcome { get; }

    /// <summary>Its probability, 0 to 1.</summary>
    public double Probability { get; }

    /// <summary>The likeliest faults then, at most three, each with its probability.</summary>
    public ImmutableArray<FaultExplanation> Faults { get; }

    /// <summary>Those faults in words.</summary>
    public string Meaning { get; }
}
