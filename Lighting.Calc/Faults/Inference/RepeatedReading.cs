using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>The test that takes a reading once more: where the likeliest fault leaves it unexplained, it is either a
/// blunder or speaks against that fault.</summary>
internal sealed class RepeatedReading(
    FaultModel model,
    ImmutableArray<Particle> grid,
    IReadOnlyList<Evidence> evidence
)
{
    private const int Mentioned = 3;

    /// <summary>The test of one reading of the evidence.</summary>
    /// <param name="index">Its index.</param>
    /// <param name="blunder">Probability that it is one.</param>
    /// <param name="cost">What the test costs.</param>
    public NextTest Test(int index, double blunder, double cost)
    {
        Evidence reading = evidence[index];
        Evidence[] same = [.. evidence.Select((e, i) => i == index ? e with { Times = e.Times + 1 } : e)],
            without = [.. evidence.Where((_, i) => i != index)];
        Posterior now = Posterior.Of(model, grid, evidence),
            again = Posterior.Of(model, grid, same),
            other = Posterior.Of(model, grid, without);
        double gain = Math.Max(0, Bits(now) - (1 - blunder) * Bits(again) - blunder * Bits(other));
        return new NextTest(
            model,
            reading.Place,
            gain,
            cost,
            $"once more: {FaultWords.Instruction(reading.Place, model)}",
            [
                Outcome($"{FaultWords.Result(reading.Reading)} again", 1 - blunder, again, same),
                Outcome("anything else", blunder, other, without),
            ]
        );
    }

    private TestOutcome Outcome(string name, double probability, Posterior posterior, Evidence[] readings)
    {
        var explainer = new Explainer(model, posterior, readings);
        ImmutableArray<FaultExplanation> likely =
        [
            .. Enumerable
                .Range(0, model.Families.Length)
                .OrderBy(f => model.Families[f].IsBroad && posterior.FamilyWeights[f] < FaultGroup.NotListedLeads)
                .ThenByDescending(f => posterior.FamilyWeights[f])
                .Take(Mentioned)
                .Where(f => posterior.FamilyWeights[f] > 0.02)
                .Select(f => explainer.Named(f, posterior.FamilyWeights[f])),
        ];
        return new TestOutcome(name, probability, likely, TestOutcomes.Words(likely));
    }

    private static double Bits(Posterior posterior) =>
        -posterior.FamilyWeights.Where(w => w > 0).Sum(w => w * Math.Log2(w));
}
