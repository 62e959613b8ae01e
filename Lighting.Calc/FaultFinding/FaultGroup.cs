using System.Collections.Immutable;

namespace Lighting.Calc.FaultFinding;

/// <summary>Faults that no reading of the sheet can tell apart, ranked as one.</summary>
public sealed record FaultGroup
{
    /// <summary>Probability that it is one of them, 0 to 1.</summary>
    public required double Probability { get; init; }

    /// <summary>The faults, likeliest first; one when it can be told apart from all others.</summary>
    public required ImmutableArray<FaultExplanation> Alternatives { get; init; }

    /// <summary>The readings that speak against it.</summary>
    public required ImmutableArray<ContraryReading> Against { get; init; }

    /// <summary>The likeliest of the faults.</summary>
    public FaultExplanation Best => Alternatives[0];

    /// <summary>Whether it stands for a bike in order.</summary>
    public bool IsNothing => Best.Faults[0].Kind == FaultKind.None;
}
