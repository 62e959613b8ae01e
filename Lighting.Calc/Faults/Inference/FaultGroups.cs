namespace Lighting.Calc;

/// <summary>Faults that no test can distinguish any more, as severe as the readings leave them.</summary>
/// <remarks>
/// Two faults are alike when every likely severity of the one has a severity of the other from which no test differs by
/// <see cref="Apart"/> standard deviations, and the other way round.
/// </remarks>
internal sealed class FaultGroups
{
    /// <summary>Standard deviations that distinguish two faults.</summary>
    public const double Apart = 2;

    // What a fault has below this share of its probability does not matter.
    private const double LeastShare = 0.05;

    // Fainter looks the same.
    private const double Faintest = -6;

    private readonly FaultModel _model;
    private readonly ShortList _list;
    private readonly IReadOnlyList<TestPlace> _tests;
    private readonly Column[] _columns;

    // The variance of the instrument, for each test and row.
    private readonly float[][] _own;

    private FaultGroups(FaultModel model, ShortList list, IReadOnlyList<TestPlace> tests, Column[] columns)
    {
        (_model, _list, _tests, _columns) = (model, list, tests, columns);
        var scale = new ReadingScale(model.Circuit);
        _own =
        [
            .. tests.Select(
                (t, i) =>
                    columns[i]
                        .Value.Select(v =>
                            (float)
                                Math.Pow(t.Instrument.IsLook() ? LookScale.EyeSigma : scale.Sigma(t.Instrument, v), 2)
                        )
                        .ToArray()
            ),
        ];
    }

    /// <summary>For each family the first of those of the list that it is alike to; its own index where there is none
    /// before, or it has no row.</summary>
    public static int[] Of(FaultModel model, ShortList list, IReadOnlyList<TestPlace> tests, Column[] columns)
    {
        var groups = new FaultGroups(model, list, tests, columns);
        int[] of = [.. Enumerable.Range(0, model.Families.Length)];
        var rows = new Dictionary<int, int[]>();
        foreach (int f in list.Families)
            rows[f] = groups.RowsOf(f);
        for (int i = 0; i < list.Families.Length; i++)
        {
            int f = list.Families[i];
            if (f == 0 || model.Families[f].IsBroad)
                continue;
            for (int j = 0; j < i; j++)
            {
                int g = list.Families[j];
                if (
                    g > 0
                    && !model.Families[g].IsBroad
                    && of[g] == g
                    && (
                        model.Families[f].IsSameAs(model.Families[g])
                        || groups.Alike(rows[f], rows[g]) && groups.Alike(rows[g], rows[f])
                    )
                )
                {
                    of[f] = g;
                    break;
                }
            }
        }

        return of;
    }

    private int[] RowsOf(int family)
    {
        int hypothesis = _list.Families.IndexOf(family);
        int[] rows = [.. Enumerable.Range(0, _list.Of.Length).Where(r => _list.Of[r] == hypothesis)];
        double sum = rows.Sum(r => _list.Weights[r]);
        return [.. rows.Where(r => _list.Weights[r] >= LeastShare * sum)];
    }

    private bool Alike(int[] those, int[] others) =>
        Array.TrueForAll(those, a => Array.Exists(others, b => SameReadings(a, b)));

    private bool SameReadings(int a, int b)
    {
        for (int t = 0; t < _columns.Length; t++)
        {
            // A poor connection that is moved flickers only in some cases.
            if (_tests[t].Instrument == Instrument.Wiggle)
                continue;
            Column column = _columns[t];
            double difference = column.Value[a] - column.Value[b];
            if (_tests[t].Instrument.IsLook())
                difference = Math.Max(column.Value[a], Faintest) - Math.Max(column.Value[b], Faintest);
            double variance = _own[t][a] + column.Sigma[a] * column.Sigma[b] + column.OwnAt(a) * column.OwnAt(b);
            if (difference * difference > Apart * Apart * variance)
                return false;
        }

        return true;
    }
}
