using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Looks for two faults at once where no single one explains the readings.</summary>
/// <remarks>
/// A leading single fault is held, and every second one is weighed on all readings; then the second of the best pairs
/// is held and every first one weighed. Leading are those that explain all readings best, and those that explain each
/// abnormal one best. Every pair is solved at a few severities, the best pairs then at all. Both faults are taken as
/// independent.
/// </remarks>
internal sealed class PairSearch(
    FaultModel model,
    ImmutableArray<Particle> grid,
    Posterior posterior,
    Evidence[] evidence
)
{
    private const int OverallLeaders = 4;
    private const int LeadersForAReading = 2;
    private const int MostLeaders = 10;
    private const int Exchanged = 4;
    private const int RefinedPairs = 8;
    private const int MentionedPairs = 32;

    private readonly ReadingScale _scale = new(model.Circuit);
    private readonly ((Setting Setting, double? EngineRpm) State, int[] Readings, TestPlace[] Tests)[] _bySetting =
    [
        .. Enumerable
            .Range(0, evidence.Length)
            .GroupBy(i => evidence[i].Place.State)
            .Select(g => (g.Key, g.ToArray(), g.Select(i => evidence[i].Place).ToArray())),
    ];

    /// <summary>The best pairs, likeliest first; none with fewer than two readings.</summary>
    public ImmutableArray<FaultPair> Find(CancellationToken cancellationToken)
    {
        if (evidence.Length < 2)
            return [];
        int[] every =
        [
            .. Enumerable.Range(1, model.Families.Length - 1).Where(f => !model.Families[f].IsBroad).SelectMany(Coarse),
        ];
        var known = new Dictionary<(int, int), double>();
        Hold(Leaders());
        // Of several severities of one pair of faults the best.
        Hold([.. Best().Take(Exchanged).Select(p => p.B)]);
        (int A, int B)[] best = [.. Best().Take(MentionedPairs)];
        return
        [
            .. Each(
                    Enumerable.Range(0, best.Length).ToArray(),
                    (solver, i) =>
                        i < RefinedPairs
                            ? Refine(solver, best[i].A, best[i].B)
                            : Exact(solver, best[i].A, best[i].B, model.Members[best[i].A], model.Members[best[i].B]),
                    cancellationToken
                )
                .OrderByDescending(p => p.LogWeight)
                .ThenBy(p => p.Nearest[0])
                .ThenBy(p => p.Nearest[1]),
        ];

        IEnumerable<(int A, int B)> Best() =>
            known
                .OrderByDescending(p => p.Value)
                .ThenBy(p => p.Key)
                .Select(p => p.Key)
                .DistinctBy(p =>
                    (
                        Math.Min(model.FamilyOf[p.Item1], model.FamilyOf[p.Item2]),
                        Math.Max(model.FamilyOf[p.Item1], model.FamilyOf[p.Item2])
                    )
                );

        void Hold(int[] held)
        {
            (int A, int B)[] pairs =
            [
                .. (
                    from a in held
                    from b in every
                    where CanBeTogether(a, b) && !known.ContainsKey((a, b))
                    select (a, b)
                ).Distinct(),
            ];
            var weights = new double[pairs.Length];
            model.ForEach(
                pairs.Length,
                (solver, i) => weights[i] = Weigh(solver, pairs[i].A, pairs[i].B),
                cancellationToken
            );
            for (int i = 0; i < pairs.Length; i++)
                known[pairs[i]] = weights[i];
        }
    }

    /// <summary>The same with the spread of those whose numbers are shown.</summary>
    public ImmutableArray<FaultPair> WithSpread(
        ImmutableArray<FaultPair> pairs,
        Func<int, bool> isShown,
        CancellationToken cancellationToken
    ) =>
        [
            .. Each(
                [.. Enumerable.Range(0, pairs.Length)],
                (solver, i) => isShown(i) ? WithSpread(solver, pairs[i]) : pairs[i],
                cancellationToken
            ),
        ];

    // Only one bridge and one crossing is in the circuit, and two states of one part are one fault.
    private bool CanBeTogether(int a, int b)
    {
        FaultFamily first = model.Members[a].Family,
            second = model.Members[b].Family;
        return first != second
            && !(first is ShortBetweenCircuits && second is ShortBetweenCircuits)
            && !(first is CrossedWires && second is CrossedWires)
            && !(first is LampFault && second is LampFault && first.Part == second.Part)
            && !first.IsSameAs(second);
    }

    private FaultPair[] Each<T>(T[] items, Func<FaultSolver, T, FaultPair> work, CancellationToken cancellationToken)
    {
        var done = new FaultPair[items.Length];
        model.ForEach(items.Length, (solver, i) => done[i] = work(solver, items[i]), cancellationToken);
        return done;
    }

    private int[] Leaders()
    {
        var chosen = new List<int>(Leading(posterior, OverallLeaders));
        foreach (Evidence e in evidence)
        {
            var healthy = new Likelihood(_scale);
            healthy.Take(e, e.Predicted.At(0));
            if (healthy.Distance > Explainer.ConflictDistance)
                chosen.AddRange(Leading(Posterior.Of(model, grid, [e]), LeadersForAReading));
        }

        return [.. chosen.Distinct().Take(MostLeaders)];
    }

    // The likeliest severities of the likeliest faults.
    private IEnumerable<int> Leading(Posterior of, int count) =>
        Enumerable
            .Range(1, of.FamilyWeights.Length - 1)
            .Where(f => !model.Families[f].IsBroad)
            .OrderByDescending(f => of.FamilyWeights[f])
            .Take(count)
            .Select(f =>
                Enumerable.Range(model.FirstOf[f], model.Families[f].Cases.Length).MaxBy(m => of.MemberWeights[m])
            );

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

        return Exact(solver, a, b, first, second);

        IEnumerable<int> All(int member)
        {
            int family = model.FamilyOf[member];
            return Enumerable.Range(model.FirstOf[family], model.Families[family].Cases.Length);
        }
    }

    private FaultPair Exact(FaultSolver solver, int a, int b, in FaultMember first, in FaultMember second)
    {
        Prediction[] exact = Predict(solver, a, b, first, second, isExact: true);
        (double weight, double resembling) = WeighBoth(exact, a, b);
        return new FaultPair([first, second], [a, b], weight, resembling, [.. exact], [Held(first), Held(second)]);
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
        fault.Family.IsResistance && double.IsFinite(fault.Case.Ohms) ? (fault.Case.Ohms, fault.Case.Ohms) : null;

    private FaultPair WithSpread(FaultSolver solver, FaultPair pair) =>
        pair with
        {
            Spread =
            [
                Spread(solver, pair.Nearest[0], pair.Nearest[1], pair.Members[0], pair.Members[1], ofFirst: true),
                Spread(solver, pair.Nearest[0], pair.Nearest[1], pair.Members[0], pair.Members[1], ofFirst: false),
            ],
        };

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

        return ends[0] <= ends[1] ? (ends[0], ends[1]) : (ends[1], ends[0]);
    }

    private double Weigh(FaultSolver solver, int a, int b) => Weigh(solver, a, b, model.Members[a], model.Members[b]);

    // a and b are the nearest severities of the grid, whose tolerances and priors hold for those between as well.
    private double Weigh(FaultSolver solver, int a, int b, in FaultMember first, in FaultMember second) =>
        Weigh(Predict(solver, a, b, first, second, isExact: false), a, b);

    private double Weigh(Prediction[] predicted, int a, int b) => WeighBoth(predicted, a, b).Weight;

    private (double Weight, double Resembling) WeighBoth(Prediction[] predicted, int a, int b)
    {
        var likelihood = new Likelihood(_scale);
        for (int i = 0; i < evidence.Length; i++)
            likelihood.Take(evidence[i], predicted[i]);
        double prior = Math.Log(model.PriorOf(a) * model.PriorOf(b)),
            like =
                model.Members[a].Family.Joins || model.Members[b].Family.Joins
                    ? NotListed.ResemblingJoined
                    : NotListed.Resembling,
            resembling = 0;
        for (int k = 0; k < NotListed.Shares; k++)
            resembling += like / NotListed.Shares * Math.Exp(likelihood.Resembling(k) - likelihood.Logarithm);
        return (likelihood.Logarithm + prior, likelihood.Logarithm + prior + Math.Log(resembling));
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
        foreach (((Setting setting, double? engine), int[] readings, TestPlace[] tests) in _bySetting)
        {
            double[] values = model.In(setting, engine).Read(solver, first, second, tests, isExact);
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
