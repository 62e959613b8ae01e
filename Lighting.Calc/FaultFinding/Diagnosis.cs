using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.FaultFinding;

/// <summary>What readings say about a bike.</summary>
public sealed record Diagnosis
{
    /// <summary>The faults, likeliest first; those below a thousandth are left out.</summary>
    public required ImmutableArray<FaultGroup> Ranked { get; init; }

    /// <summary>Whether readings were taken, none speaks of a fault, and no fault is likelier than a bike in order.</summary>
    public required bool NothingFound { get; init; }

    /// <summary>The answer in one sentence.</summary>
    public required string Summary { get; init; }

    /// <summary>The next test; null when no test tells enough to be worth doing.</summary>
    public required NextTest? Next { get; init; }

    /// <summary>What is wrong with the readings themselves, all at once.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>The readings that were reckoned with; repeated ones as their mean.</summary>
    public required ImmutableArray<Reading> Used { get; init; }
}
