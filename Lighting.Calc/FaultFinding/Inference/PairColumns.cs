using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.FaultFinding;

/// <summary>What the tests of the sheet read under pairs of faults, behind what they read under the single ones.</summary>
internal static class PairColumns
{
    public static List<(TestPlace Test, Column Column)> Of(FaultModel model, List<(TestPlace Test, Column Column)> tests, ImmutableArray<FaultPair> pairs, CancellationToken cancellation)
    {
        (TestPlace Test, Column Column)[] longer = [.. tests.Select(t => (t.Test, t.Column.Longer(pairs.Length)))];
        IGrouping<Setting, int>[] settings = [.. Enumerable.Range(0, longer.Length).GroupBy(i => longer[i].Test.Setting)];
        Parallel.For(0, settings.Length * pairs.Length, new ParallelOptions { CancellationToken = cancellation }, () => new FaultSolver(model.Circuit, model.Draws), (k, _, solver) =>
        {
            IGrouping<Setting, int> setting = settings[k / pairs.Length];
            int p = k % pairs.Length, row = model.Members.Length + p;
            FaultPair pair = pairs[p];
            int[] own = [.. setting];
            double[] values = model.In(setting.Key).Read(solver, pair.Members[0], pair.Members[1], [.. own.Select(i => longer[i].Test)], isExact: true);
            for (int i = 0; i < own.Length; i++)
                longer[own[i]].Column.Take(row, values[i], pair.Nearest);
            return solver;
        }, _ => { });
        return [.. longer];
    }
}
