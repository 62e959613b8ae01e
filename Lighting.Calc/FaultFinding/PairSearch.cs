using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.FaultFinding;

/// <summary>Looks for two faults at once where no single one explains the readings.</summary>
/// <remarks>
/// Pairs are made of the faults that explain all readings best and of those that explain best each reading that is not as it
/// should be. Every pair is solved at a few severities, the best pairs then at all. Both faults are taken as independent.
/// </remarks>
internal sealed class PairSearch(FaultModel model, ImmutableArray<Particle> grid, Posterior posterior, Evidence[] evidence)
{
    private const int OverallFaults = 6;
    private const int FaultsForAReading = 5;
    private const int MostFaults = 22;
    private const int RefinedPairs = 12;

    private readonly ReadingScale _scale = new(model.Circuit);
    private readonly int[] _first = First(model);

    /// <summary>The best pairs, likeliest first; none with fewer than two readings.</summary>
    public ImmutableArray<FaultPair> Find(CancellationToken cancellation)
    {
        if (evidence.Length < 2)
            return [];
        int[] families = Candidates();
        var pairs = (from a in families from b in families where a < b select (A: a, B: b)).ToArray();
        var coarse = new (double LogWeight, int A, int B)[pairs.Length];
        Parallel.For(0, pairs.Length, new ParallelOptions { CancellationToken = cancellation }, () => new FaultSolver(model.Circuit, model.Draws), (i, _, solver) =>
        {
            coarse[i] = (double.NegativeInfinity, 0, 0);
            foreach (int a in Coarse(pairs[i].A))
                foreach (int b in Coarse(pairs[i].B))
                    if (Weigh(solver, a, b) is var weight && weight > coarse[i].LogWeight)
                        coarse[i] = (weight, a, b);
            return solver;
        }, _ => { });
        var refining = new FaultSolver(model.Circuit, model.Draws);
        return
        [
            .. coarse.OrderByDescending(c => c.LogWeight).Take(RefinedPairs).Select(c => Refine(refining, c.A, c.B)).OrderByDescending(p => p.LogWeight),
        ];
    }

    private static int[] First(FaultModel model)
    {
        var first = new int[model.Families.Length];
        for (int f = 1; f < first.Length; f++)
            first[f] = first[f - 1] + model.Families[f - 1].Cases.Length;
        return first;
    }

    private int[] Candidates()
    {
        var chosen = new List<int>(Best(posterior, OverallFaults));
        foreach (Evidence e in evidence)
        {
            var healthy = new Likelihood(_scale);
            healthy.Take(e, e.Predicted.At(0));
            if (healthy.Distance > Explainer.AgainstDistance)
                chosen.AddRange(Best(Posterior.Of(model, grid, [e]), FaultsForAReading));
        }

        return [.. chosen.Distinct().Take(MostFaults)];
    }

    private static IEnumerable<int> Best(Posterior of, int count) =>
        Enumerable.Range(1, of.FamilyWeights.Length - 1).OrderByDescending(f => of.FamilyWeights[f]).Take(count);

    private int[] Coarse(int family)
    {
        int count = model.Families[family].Cases.Length, first = _first[family];
        return model.Families[family].IsContinuous && count > 4
            ? [first + count / 6, first + count * 2 / 5, first + count * 3 / 5, first + count - 1]
            : [.. Enumerable.Range(first, count)];
    }

    // First over all severities of the lists' grid, then between them: a resistance that is off by half a step would lie
    // several standard deviations off the readings.
    private FaultPair Refine(FaultSolver solver, int a, int b)
    {
        double best = Weigh(solver, a, b);
        for (int round = 0; round < 2; round++)
        {
            foreach (int other in All(a))
                if (Weigh(solver, other, b) is var weight && weight > best)
                    (best, a) = (weight, other);
            foreach (int other in All(b))
                if (Weigh(solver, a, other) is var weight && weight > best)
                    (best, b) = (weight, other);
        }

        FaultMember first = model.Members[a], second = model.Members[b];
        foreach (double step in new[] { 0.125, 0.03, 0.008, 0.125, 0.03, 0.008 })
        {
            foreach (FaultMember other in Near(first, step))
                if (Weigh(solver, a, b, other, second) is var weight && weight > best)
                    (best, first) = (weight, other);
            foreach (FaultMember other in Near(second, step))
                if (Weigh(solver, a, b, first, other) is var weight && weight > best)
                    (best, second) = (weight, other);
        }

        return new FaultPair([first, second], best, Predict(solver, a, b, first, second));

        IEnumerable<int> All(int member)
        {
            int family = model.FamilyOf[member];
            return Enumerable.Range(_first[family], model.Families[family].Cases.Length);
        }
    }

    private static IEnumerable<FaultMember> Near(FaultMember member, double decades)
    {
        if (!member.Family.IsContinuous || double.IsInfinity(member.Case.Ohms))
            return [];
        return new[] { -3, -2, -1, 1, 2, 3 }.Select(k => member with
        {
            Case = member.Family.IsShare
                ? member.Case with { Factor = member.Case.Factor * Math.Pow(10, k * decades / 3) }
                : member.Case with { Ohms = member.Case.Ohms * Math.Pow(10, k * decades) },
        });
    }

    private double Weigh(FaultSolver solver, int a, int b) => Weigh(solver, a, b, model.Members[a], model.Members[b]);

    // a and b are the nearest severities of the grid, whose tolerances and priors hold for those between as well.
    private double Weigh(FaultSolver solver, int a, int b, in FaultMember first, in FaultMember second)
    {
        Dictionary<Evidence, Prediction> predicted = Predict(solver, a, b, first, second);
        var likelihood = new Likelihood(_scale);
        foreach (Evidence e in evidence)
            likelihood.Take(e, predicted[e]);
        return likelihood.Logarithm + Math.Log(first.Family.Prior * first.Case.Share * second.Family.Prior * second.Case.Share);
    }

    // Tolerance and battery dependence are those of the single fault that has more of the first.
    private Dictionary<Evidence, Prediction> Predict(FaultSolver solver, int a, int b, in FaultMember first, in FaultMember second)
    {
        var predicted = new Dictionary<Evidence, Prediction>();
        foreach (IGrouping<Setting, Evidence> inSetting in evidence.GroupBy(e => e.Place.Setting))
        {
            ColdNetwork? cold = null;
            foreach (Evidence e in inSetting)
            {
                double value = e.Place.Instrument == Instrument.Ohmmeter
                    ? Ohms(cold ??= new ColdNetwork(model.Circuit, inSetting.Key, first, second), e)
                    : model.In(inSetting.Key).Read(solver, first, second, e.Place);
                predicted[e] = e.Predicted.At(e.Predicted.Sigma[a] > e.Predicted.Sigma[b] ? a : b) with { Value = value };
            }
        }

        return predicted;
    }

    private double Ohms(ColdNetwork cold, Evidence e) => OhmScale.Logarithm(cold.Between(model.Parts[e.Place.Index].From, model.Parts[e.Place.Index].To), model.Circuit.Options);
}
