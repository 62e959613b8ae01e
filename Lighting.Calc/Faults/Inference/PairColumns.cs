using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What the tests of the sheet read under pairs of faults, behind what they read under the single
/// ones.</summary>
internal static class PairColumns
{
    public static List<(TestPlace Test, Column Column)> Of(
        FaultModel model,
        List<(TestPlace Test, Column Column)> tests,
        ImmutableArray<FaultPair> pairs,
        CancellationToken cancellationToken
    )
    {
        (TestPlace Test, Column Column)[] longer = [.. tests.Select(t => (t.Test, t.Column.Longer(pairs.Length)))];
        IGrouping<Setting, int>[] settings =
        [
            .. Enumerable.Range(0, longer.Length).GroupBy(i => longer[i].Test.Setting),
        ];
        model.ForEach(settings.Length * pairs.Length, TakeAll, cancellationToken);
        return [.. longer];

        void TakeAll(FaultSolver solver, int k)
        {
            (IGrouping<Setting, int> setting, FaultPair pair) = (settings[k / pairs.Length], pairs[k % pairs.Length]);
            int[] own = [.. setting];
            double[] values = model
                .In(setting.Key)
                .Read(solver, pair.Members[0], pair.Members[1], [.. own.Select(i => longer[i].Test)], isExact: true);
            for (int i = 0; i < own.Length; i++)
                longer[own[i]].Column.Take(model.Members.Length + k % pairs.Length, values[i], pair.Nearest);
        }
    }
}
