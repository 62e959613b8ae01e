using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Faults that no reading of the sheet can distinguish, ranked as one.</summary>
public sealed class FaultGroup
{
    internal FaultGroup(
        double probability,
        ImmutableArray<FaultExplanation> alternatives,
        ImmutableArray<ConflictingReading> conflicting
    ) => (Probability, Alternatives, Conflicting) = (probability, alternatives, conflicting);

    /// <summary>Probability that it is one of them, 0 to 1.</summary>
    public double Probability { get; }

    /// <summary>The faults, likeliest first; one if it can be distinguished from all others.</summary>
    public ImmutableArray<FaultExplanation> Alternatives { get; }

    /// <summary>The readings that conflict with it.</summary>
    public ImmutableArray<ConflictingReading> Conflicting { get; }

    /// <summary>The likeliest of the faults.</summary>
    public FaultExplanation Best => Alternatives[0];

    /// <summary>Whether it is "no fault".</summary>
    public bool IsNothing => Best.Faults[0].Kind == FaultKind.None;

    /// <summary>What is not listed stands for many faults: it leads once it is likelier than all others
    /// together.</summary>
    internal const double NotListedLeads = 0.5;

    internal bool IsNotListed => Best.Faults[0].Kind == FaultKind.NotListed;

    // With what pairs of faults add to it.
    internal FaultGroup Times(double factor, double added) =>
        new(Probability * factor + added, [.. Alternatives.Select(a => a.Times(factor, added))], Conflicting);
}
