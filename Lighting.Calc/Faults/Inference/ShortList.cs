using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What the next test is to decide between: the severities and pairs of faults that the readings leave, and
/// what each test reads under them.</summary>
/// <remarks>
/// Neighbouring severities of one fault stand for each other, so that the list stays short; "nothing" is always the
/// first row. The least likely that together have <see cref="Negligible"/> are left out.
/// </remarks>
internal sealed class ShortList
{
    private const double Negligible = 0.005;

    // A fault of more severities than this is brought to as many steps of equal probability.
    private const int Steps = 5;

    // With more rows than this more of the unlikely ones are left out.
    private const int MostRows = 140;

    private readonly FaultModel _model;
    private readonly int[] _members;
    private readonly ImmutableArray<FaultPair> _pairs;

    private ShortList(
        FaultModel model,
        List<(int Member, double Weight, double Resembling)> rows,
        double changed,
        ImmutableArray<FaultPair> pairs,
        PairShares shares
    )
    {
        int[] left = [.. Left(shares)];
        _model = model;
        _members = [.. rows.Select(r => r.Member)];
        _pairs = [.. left.Select(p => pairs[p])];
        Changed = changed;
        Weights = [.. rows.Select(r => r.Weight * shares.Single), .. left.Select(p => shares.Pairs[p])];
        Resembling = [.. rows.Select(r => r.Resembling * shares.Single), .. left.Select(p => shares.Resembling[p])];
        for (int r = 0; r < _members.Length; r++)
            if (model.Members[_members[r]].Family.IsBroad)
                Weights[r] += shares.Resembling.Sum();
        Families = [.. rows.Select(r => model.FamilyOf[r.Member]).Distinct()];
        Of =
        [
            .. rows.Select(r => Families.IndexOf(model.FamilyOf[r.Member])),
            .. Enumerable.Range(Families.Length, _pairs.Length),
        ];
        IsBroad = [.. rows.Select(r => model.Members[r.Member].Family.IsBroad), .. _pairs.Select(_ => false)];
    }

    /// <summary>The families that have rows, each a hypothesis; those of the pairs follow.</summary>
    public ImmutableArray<int> Families { get; }

    /// <summary>The pairs.</summary>
    public ImmutableArray<FaultPair> Pairs => _pairs;

    /// <summary>Index of the hypothesis that each row belongs to.</summary>
    public ImmutableArray<int> Of { get; }

    /// <summary>For each row whether it may change any reading.</summary>
    public ImmutableArray<bool> IsBroad { get; }

    /// <summary>For each row the probability of what is not listed but resembles it.</summary>
    public double[] Resembling { get; }

    /// <summary>Share of the readings that what is not listed changes.</summary>
    public double Changed { get; }

    /// <summary>Number of hypotheses.</summary>
    public int Count => Families.Length + _pairs.Length;

    /// <summary>Probability of each row.</summary>
    public double[] Weights { get; }

    /// <summary>Probability of a short to the frame, which an ammeter or a jumper would feed.</summary>
    public double Shorts => Sum(m => m.Family is ShortToFrame);

    /// <summary>Probability of any connection to the frame, a short or a leak.</summary>
    public double ToFrame => Sum(m => m.Family is ShortToFrame or LeakToFrame);

    private double Sum(Func<FaultMember, bool> isMeant)
    {
        double sum = 0;
        for (int i = 0; i < Weights.Length; i++)
            if (
                i < _members.Length
                    ? isMeant(_model.Members[_members[i]])
                    : _pairs[i - _members.Length].Members.Any(isMeant)
            )
                sum += Weights[i];
        return sum;
    }

    /// <param name="model">The faults.</param>
    /// <param name="posterior">Their probabilities.</param>
    /// <param name="pairs">Pairs of faults; none where a single one explains the readings.</param>
    /// <param name="shares">The probabilities of single faults and of the pairs.</param>
    public static ShortList Making(
        FaultModel model,
        Posterior posterior,
        ImmutableArray<FaultPair> pairs,
        PairShares shares
    )
    {
        List<(int Member, double Weight, double Resembling)> rows = Rows(model, posterior, Negligible);
        for (double less = 2 * Negligible; rows.Count > MostRows && less < 0.1; less *= 2)
            rows = Rows(model, posterior, less);
        return new ShortList(model, rows, posterior.Changed, pairs, shares);
    }

    /// <summary>What tests read under every row.</summary>
    public Column[] Columns(IReadOnlyList<TestPlace> tests, CancellationToken cancellationToken)
    {
        Column[] known = _model.Of(tests, _members, cancellationToken),
            columns =
            [
                .. tests.Select(t =>
                    Column.Of(Weights.Length, _model.Circuit.SupplyAt(t.EngineRpm), withDraws: false)
                ),
            ];
        for (int t = 0; t < columns.Length; t++)
            for (int r = 0; r < _members.Length; r++)
                columns[t].Take(r, known[t], _members[r]);
        (SettingPredictions Here, int[] Own, TestPlace[] Tests)[] settings = _pairs.IsEmpty
            ? []
            :
            [
                .. Enumerable
                    .Range(0, tests.Count)
                    .GroupBy(i => tests[i].State)
                    .Select(g =>
                        (
                            _model.In(g.Key.Setting, g.Key.EngineRpm),
                            g.ToArray(),
                            g.Select(i => tests[i]).ToArray()
                        )
                    ),
            ];
        _model.ForEach(
            settings.Length * _pairs.Length,
            (solver, i) =>
            {
                (SettingPredictions here, int[] own, TestPlace[] its) = settings[i / _pairs.Length];
                int p = i % _pairs.Length;
                double[] values = here.Read(solver, _pairs[p].Members[0], _pairs[p].Members[1], its, isExact: true);
                for (int k = 0; k < own.Length; k++)
                    columns[own[k]].Take(_members.Length + p, values[k], known[own[k]], [0]);
            },
            cancellationToken
        );
        return columns;
    }

    private static IEnumerable<int> Left(PairShares shares)
    {
        int[] ascending = [.. Enumerable.Range(0, shares.Pairs.Length).OrderBy(Weight)];
        double passed = 0;
        return ascending.SkipWhile(p => (passed += Weight(p)) < Negligible).Order().ToArray();

        double Weight(int pair) => shares.Pairs[pair] + shares.Resembling[pair];
    }

    private static List<(int Member, double Weight, double Resembling)> Rows(
        FaultModel model,
        Posterior posterior,
        double negligible
    )
    {
        double[] weights = posterior.MemberWeights,
            like = posterior.ResemblingWeights;
        int[] ascending = [.. Enumerable.Range(0, weights.Length).OrderBy(m => weights[m] + like[m])];
        var isLeft = new bool[weights.Length];
        double passed = 0;
        foreach (int m in ascending)
            if ((passed += weights[m] + like[m]) >= negligible)
                isLeft[m] = true;
        var rows = new List<(int Member, double Weight, double Resembling)> { (0, weights[0], like[0]) };
        for (int f = 1; f < model.Families.Length; f++)
        {
            int first = model.FirstOf[f];
            int[] left = [.. Enumerable.Range(first, model.Families[f].Cases.Length).Where(m => isLeft[m])];
            if (!model.Families[f].IsContinuous || left.Length <= Steps)
            {
                rows.AddRange(left.Select(m => (m, weights[m], like[m])));
                continue;
            }

            double step = left.Sum(m => weights[m] + like[m]) / Steps,
                sum = 0,
                sumLike = 0;
            int heaviest = -1;
            foreach (int m in left)
            {
                sum += weights[m];
                sumLike += like[m];
                if (heaviest < 0 || weights[m] + like[m] > weights[heaviest] + like[heaviest])
                    heaviest = m;
                if (sum + sumLike < step * (1 - 1e-9) && m != left[^1])
                    continue;
                rows.Add((heaviest, sum, sumLike));
                (sum, sumLike, heaviest) = (0, 0, -1);
            }
        }

        return rows;
    }
}
