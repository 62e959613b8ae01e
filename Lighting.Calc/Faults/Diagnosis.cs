using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What readings say about a bike.</summary>
public sealed class Diagnosis
{
    internal Diagnosis(ImmutableArray<FaultGroup> ranked, bool nothingFound, string summary, NextTest? next, ImmutableArray<Finding> findings, ImmutableArray<Reading> used) =>
        (Ranked, NothingFound, Summary, Next, Findings, Used) = (ranked, nothingFound, summary, next, findings, used);

    /// <summary>The faults, likeliest first; those below a thousandth are left out.</summary>
    public ImmutableArray<FaultGroup> Ranked { get; }

    /// <summary>Whether readings were taken, none speaks of a fault, and no fault is likelier than a bike in order.</summary>
    public bool NothingFound { get; }

    /// <summary>The answer in one sentence.</summary>
    public string Summary { get; }

    /// <summary>The next test; null when no test is worth its cost.</summary>
    public NextTest? Next { get; }

    /// <summary>Errors in the readings themselves, all at once.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>The readings that count; repeated ones as their mean.</summary>
    public ImmutableArray<Reading> Used { get; }
}
