using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Puts pairs of faults into words.</summary>
internal sealed class PairExplainer(Explainer explainer)
{
    private const string And = ", together with ";

    public FaultGroup Group(FaultPair pair, double probability)
    {
        ImmutableArray<ReadingFit> fits = explainer.Fits(pair.Predicted);
        ImmutableArray<Fault> faults = FaultsOf(pair);
        string head = string.Join(And, pair.Members.Select((m, i) => m.Family.Sentence(faults[i])));
        return new FaultGroup(
            probability,
            [new FaultExplanation(faults, probability, head + explainer.Explained(fits))],
            explainer.Conflicting(fits)
        );
    }

    /// <summary>What the pair is, without how severe.</summary>
    public FaultExplanation Named(FaultPair pair, double probability)
    {
        ImmutableArray<Fault> faults = FaultsOf(pair);
        return new FaultExplanation(
            faults,
            probability,
            string.Join(And, pair.Members.Select((m, i) => m.Family.Title(faults[i])))
        );
    }

    private static ImmutableArray<Fault> FaultsOf(FaultPair pair) =>
        [
            .. pair.Members.Select(
                (m, i) =>
                    m.Family.At(
                        m.Case,
                        pair.Spread[i] is { } s ? FittedResistance.Of(m.Case.Ohms, s.Low, s.High) : null
                    )
            ),
        ];
}
