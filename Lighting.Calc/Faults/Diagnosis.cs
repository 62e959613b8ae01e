using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Result of fault finding.</summary>
public sealed class Diagnosis
{
    internal Diagnosis(
        ImmutableArray<FaultGroup> ranked,
        bool nothingFound,
        string summary,
        NextTest? next,
        ImmutableArray<Finding> findings,
        ImmutableArray<Reading> used
    ) => (Ranked, NothingFound, Summary, Next, Findings, Used) = (ranked, nothingFound, summary, next, findings, used);

    /// <summary>Faults, likeliest first; those below 0.1 % are omitted.</summary>
    public ImmutableArray<FaultGroup> Ranked { get; }

    /// <summary>Whether there are readings and a healthy bike explains them best.</summary>
    public bool NothingFound { get; }

    /// <summary>Summary in one sentence.</summary>
    public string Summary { get; }

    /// <summary>The next test; null if no test is worth its cost.</summary>
    public NextTest? Next { get; }

    /// <summary>Errors in the readings.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>Readings used; repeated ones as their mean.</summary>
    public ImmutableArray<Reading> Used { get; }
}
