using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What the next test is to decide between: the single faults, and pairs of faults where no single one
/// explains the readings.</summary>
internal sealed class Hypotheses
{
    private Hypotheses() { }

    /// <summary>Index of the hypothesis that each row of the columns belongs to; first the families, then the
    /// pairs.</summary>
    public required ImmutableArray<int> Of { get; init; }

    /// <summary>Number of hypotheses.</summary>
    public required int Count { get; init; }

    /// <summary>Probability of each row.</summary>
    public required double[] Weights { get; init; }

    /// <summary>What the likeliest fault says of the supply's voltage, as a share above the list's.</summary>
    public required double SupplyMean { get; init; }

    /// <summary>Variance of <see cref="SupplyMean"/>.</summary>
    public required double SupplyVariance { get; init; }

    /// <summary>Probability that there is a short to the frame.</summary>
    public required double Shorts { get; init; }

    /// <summary>Names a hypothesis, with the probability given.</summary>
    public required Func<int, double, FaultExplanation> Named { get; init; }

    public static Hypotheses Singles(FaultModel model, Posterior posterior, Explainer explainer) =>
        new()
        {
            Of = model.FamilyOf,
            Count = model.Families.Length,
            Weights = posterior.MemberWeights,
            SupplyMean = posterior.BatteryMean,
            SupplyVariance = posterior.BatteryVariance,
            Shorts = Enumerable
                .Range(0, model.Families.Length)
                .Where(f => model.Families[f] is ShortToFrame)
                .Sum(f => posterior.FamilyWeights[f]),
            Named = explainer.Named,
        };

    /// <summary>The same and pairs.</summary>
    /// <param name="pairs">The pairs.</param>
    /// <param name="single">Probability that it is a single fault.</param>
    /// <param name="probabilities">Those of the pairs.</param>
    /// <param name="words">Names the pairs.</param>
    public Hypotheses With(
        ImmutableArray<FaultPair> pairs,
        double single,
        double[] probabilities,
        PairExplainer words
    ) =>
        new()
        {
            Of = [.. Of, .. Enumerable.Range(Count, pairs.Length)],
            Count = Count + pairs.Length,
            Weights = [.. Weights.Select(w => w * single), .. probabilities],
            SupplyMean = SupplyMean,
            SupplyVariance = SupplyVariance,
            Shorts =
                Shorts * single
                + pairs.Select((p, i) => p.Members.Any(m => m.Family is ShortToFrame) ? probabilities[i] : 0).Sum(),
            Named = (h, probability) => h < Count ? Named(h, probability) : words.Named(pairs[h - Count], probability),
        };
}
