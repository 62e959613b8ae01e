using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>One fault, or a pair of faults where no single one explains the readings.</summary>
public sealed class FaultExplanation
{
    internal FaultExplanation(ImmutableArray<Fault> faults, double probability, string sentence) =>
        (Faults, Probability, Sentence) = (faults, probability, sentence);

    /// <summary>One or two.</summary>
    public ImmutableArray<Fault> Faults { get; }

    /// <summary>Its probability, 0 to 1.</summary>
    public double Probability { get; }

    /// <summary>The fault and the readings it explains, in words with figures.</summary>
    public string Sentence { get; }

    internal FaultExplanation Times(double factor, double added) => new(Faults, Probability * factor + added, Sentence);
}
