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

    internal FaultGroup Times(double factor) =>
        new(Probability * factor, [.. Alternatives.Select(a => a.Times(factor))], Conflicting);
}
