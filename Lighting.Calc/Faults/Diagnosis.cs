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
    )
    {
        (Ranked, NothingFound, Summary) = (ranked, nothingFound, summary);
        (Next, Findings, Used) = (next, findings, used);
    }

    internal Diagnosis WithFrame(Finding finding) =>
        new(
            Ranked,
            NothingFound,
            $"{Summary}\nTaken from '{finding.Subject}' the voltages would be explained: see the findings.",
            Next,
            [finding, .. Findings],
            Used
        )
        {
            Consequence = Consequence,
            Certain = Certain,
            Repair = Repair,
            Proof = Proof,
        };

    /// <summary>Faults, likeliest first; those below 0.1 % are omitted. What is not listed stands for many faults: it
    /// comes first from a probability of one half on, else last.</summary>
    public ImmutableArray<FaultGroup> Ranked { get; }

    /// <summary>Whether there are readings and a healthy bike explains them best.</summary>
    public bool NothingFound { get; }

    /// <summary>Summary: what is found, then in one line each where it is and the reading that it does not
    /// explain.</summary>
    public string Summary { get; }

    /// <summary>What the likely faults lead to, as a blown fuse, and how likely that is; null for nothing.</summary>
    internal (string Words, double Probability)? Consequence { get; init; }

    /// <summary>The fault that is likeliest to be there, by itself or with a second one, and how likely that is; null
    /// for none.</summary>
    internal (FaultGroup Group, double Probability)? Certain { get; init; }

    /// <summary>The repair of the fault that is named, in one line; null while none is likely enough.</summary>
    public string? Repair { get; internal init; }

    /// <summary>The reading that shows the repair, with what it should be; null without a repair.</summary>
    public string? Proof { get; internal init; }

    /// <summary>The next test; null if no test is worth its cost.</summary>
    public NextTest? Next { get; }

    /// <summary>Errors in the readings.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>Readings used; repeated ones as their mean.</summary>
    public ImmutableArray<Reading> Used { get; }
}
