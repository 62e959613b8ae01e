using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Looks for two faults at once where no single one explains the readings.</summary>
/// <remarks>
/// Pairs are made of the faults that explain all readings best and of those that explain best each abnormal
/// reading. Every pair is solved at a few severities, the best pairs then at all. Both faults are taken as independent.
/// </remarks>
internal sealed class PairSearch(
    FaultModel model,
    ImmutableArray<Particle> grid,
    Posterior posterior,
    Evidence[] evidence
)
{
    private const int OverallFaults = 6;
    private const int FaultsForAReading = 5;
    private const int MostFaults = 22;
    private const int RefinedPairs = 12;

    // A pair this far below the best is less likely than a thousandth, and its numbers are shown nowhere.
    private const double Unmentioned = 7;

    private readonly ReadingScale _scale = new(model.Circuit);
    private readonly (Setting Setting, int[] Readings, TestPlace[] Tests)[] _bySetting =
    [
        .. Enumerable
            .Range(0, evidence.Length)
            .GroupBy(i => evidence[i].Place.Setting)
            .Select(g => (g.Key, g.ToArray(), g.Select(i => evidence[i].Place).ToArray())),
    ];

    /// <summary>The best pairs, likeliest first; none with fewer than two readings.</summary>
    public ImmutableArray<FaultPair> Find(CancellationToken cancellationToken)
    {
        if (evidence.Length < 2)
            return [];
        int[] families = Candidates();
        var pairs = (from a in families from b in families where a < b select (A: a, B: b)).ToArray();
        var coarse = new (double LogWeight, int A, int B)[pairs.Length];
        model.ForEach(pairs.Length, TakeCoarse, cancellationToken);
        // Parallel queries would do the same, and make a native program of the library six times as large.
        (double LogWeight, int A, int B)[] best = [.. coarse.OrderByDescending(c => c.LogWeight).Take(RefinedPairs)];
        FaultPair[] refined =
        [
            .. Each(best, c => Refine(new FaultSolver(model.Circuit, model.Draws), c.A, c.B), cancellationToken)
                .OrderByDescending(p => p.LogWeight)
                .ThenBy(p => p.Nearest[0])
                .ThenBy(p => p.Nearest[1]),
        ];
        return
        [
            .. Each(
                refined,
                p => p.LogWeight < refined[0].LogWeight - Unmentioned ? p : WithSpread(p),
                cancellationToken
            ),
        ];

        void TakeCoarse(FaultSolver solver, int i)
        {
            coarse[i] = (double.NegativeInfinity, 0, 0);
            foreach (int a in Coarse(pairs[i].A))
                foreach (int b in Coarse(pairs[i].B))
                    if (Weigh(solver, a, b) is var weight && weight > coarse[i].LogWeight)
                        coarse[i] = (weight, a, b);
        }
    }

    private static FaultPair[] Each<T>(T[] items, Func<T, FaultPair> work, CancellationToken cancellationToken)
    {
        var done = new FaultPair[items.Length];
        Parallel.For(
            0,
            items.Length,
            new ParallelOptions { CancellationToken = cancellationToken },
            i => done[i] = work(items[i])
        );
        return done;
    }

    private int[] Candidates()
    {
        var chosen = new List<int>(Best(posterior, OverallFaults));
        foreach (Evidence e in evidence)
        {
            var healthy = new Likelihood(_scale);
            healthy.Take(e, e.Predicted.At(0));
            if (healthy.Distance > Explainer.ConflictDistance)
                chosen.AddRange(Best(Posterior.Of(model, grid, [e]), FaultsForAReading));
        }

        return [.. chosen.Distinct().Take(MostFaults)];
    }

    private static IEnumerable<int> Best(Posterior of, int count) =>
        Enumerable.Range(1, of.FamilyWeights.Length - 1).OrderByDescending(f => of.FamilyWeights[f]).Take(count);

    private int[] Coarse(int family)
    {
        int count = model.Families[family].Cases.Length,
            first = model.FirstOf[family];
        return model.Families[family].IsContinuous && count > 4
            ? [first + count / 6, first + count * 2 / 5, first + count * 3 / 5, first + count - 1]
            : [.. Enumerable.Range(first, count)];
    }

    // First over all severities of the lists' grid, then between them: a resistance that is off by half a step would
    // lie several standard deviations off the readings.
    private FaultPair Refine(FaultSolver solver, int a, int b)
    {
        double best = Weigh(solver, a, b);
        int before = -1,
            beforeOther = -1;
        for (int round = 0; round < 2 && (a, b) != (before, beforeOther); round++)
        {
            (before, beforeOther) = (a, b);
            foreach (int other in All(a))
                if (Weigh(solver, other, b) is var weight && weight > best)
                    (best, a) = (weight, other);
            foreach (int other in All(b))
                if (Weigh(solver, a, other) is var weight && weight > best)
                    (best, b) = (weight, other);
        }

        FaultMember first = model.Members[a],
            second = model.Members[b];
        foreach (double step in new[] { 0.125, 0.03, 0.008, 0.125, 0.03, 0.008 })
        {
            foreach (FaultMember other in Near(first, step))
                if (Weigh(solver, a, b, other, second) is var weight && weight > best)
                    (best, first) = (weight, other);
            foreach (FaultMember other in Near(second, step))
                if (Weigh(solver, a, b, first, other) is var weight && weight > best)
                    (best, second) = (weight, other);
        }

        Prediction[] exact = Predict(solver, a, b, first, second, isExact: true);
        return new FaultPair(
            [first, second],
            [a, b],
            Weigh(exact, first, second),
            [.. exact],
            [Held(first), Held(second)]
        );

        IEnumerable<int> All(int member)
        {
            int family = model.FamilyOf[member];
            return Enumerable.Range(model.FirstOf[family], model.Families[family].Cases.Length);
        }
    }

    private static IEnumerable<FaultMember> Near(FaultMember member, double decades) =>
        member.Family.IsContinuous && double.IsFinite(member.Case.Ohms)
            ? new[] { -3, -2, -1, 1, 2, 3 }.Select(k =>
                member with
                {
                    Case = member.Family.Graver(member.Case, k * decades),
                }
            )
            : [];

    private static (double Low, double High)? Held(in FaultMember fault) =>
        fault.Family is ResistanceFault && double.IsFinite(fault.Case.Ohms) ? (fault.Case.Ohms, fault.Case.Ohms) : null;

    private FaultPair WithSpread(FaultPair pair)
    {
        var solver = new FaultSolver(model.Circuit, model.Draws);
        return pair with
        {
            Spread =
            [
                Spread(solver, pair.Nearest[0], pair.Nearest[1], pair.Members[0], pair.Members[1], ofFirst: true),
                Spread(solver, pair.Nearest[0], pair.Nearest[1], pair.Members[0], pair.Members[1], ofFirst: false),
            ],
        };
    }

    // From the best outwards until the weight has fallen as far as at the ends of nine tenths of a normal distribution.
    private (double Low, double High)? Spread(
        FaultSolver solver,
        int a,
        int b,
        in FaultMember first,
        in FaultMember second,
        bool ofFirst
    )
    {
        const double step = 0.03,
            fall = 1.353;
        const int most = 60;
        FaultMember of = ofFirst ? first : second;
        if (Held(of) is null)
            return null;
        double best = Weigh(solver, a, b, first, second);
        double[] ends = [0, double.PositiveInfinity];
        for (int side = 0; side < 2; side++)
            for (int k = 1; k <= most; k++)
            {
                FaultMember moved = of with { Case = of.Family.Graver(of.Case, (side == 0 ? -k : k) * step) };
                if (Weigh(solver, a, b, ofFirst ? moved : first, ofFirst ? second : moved) > best - fall)
                    continue;
                ends[side] = moved.Case.Ohms;
                break;
            }

        return (ends[0], ends[1]);
    }

    private double Weigh(FaultSolver solver, int a, int b) => Weigh(solver, a, b, model.Members[a], model.Members[b]);

    // a and b are the nearest severities of the grid, whose tolerances and priors hold for those between as well.
    private double Weigh(FaultSolver solver, int a, int b, in FaultMember first, in FaultMember second) =>
        Weigh(Predict(solver, a, b, first, second, isExact: false), first, second);

    private double Weigh(Prediction[] predicted, in FaultMember first, in FaultMember second)
    {
        var likelihood = new Likelihood(_scale);
        for (int i = 0; i < evidence.Length; i++)
            likelihood.Take(evidence[i], predicted[i]);
        return likelihood.Logarithm
            + Math.Log(
                model.PriorOf(first.Family) * first.Case.Share * model.PriorOf(second.Family) * second.Case.Share
            );
    }

    // Tolerance and battery dependence are those of the single fault that has more of the first.
    private Prediction[] Predict(
        FaultSolver solver,
        int a,
        int b,
        in FaultMember first,
        in FaultMember second,
        bool isExact
    )
    {
        var predicted = new Prediction[evidence.Length];
        foreach ((Setting setting, int[] readings, TestPlace[] tests) in _bySetting)
        {
            double[] values = model.In(setting).Read(solver, first, second, tests, isExact);
            for (int i = 0; i < values.Length; i++)
            {
                Column column = evidence[readings[i]].Predicted;
                predicted[readings[i]] = column.At(column.Sigma[a] > column.Sigma[b] ? a : b) with
                {
                    Value = values[i],
                };
            }
        }

        return predicted;
    }
}
