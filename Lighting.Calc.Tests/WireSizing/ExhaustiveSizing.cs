using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc.Tests.WireSizing;

/// <summary>Tries every combination of sizes, least copper first, with the public solver and the fuses' own
/// checks.</summary>
internal static class ExhaustiveSizing
{
    private const double Tie = 1e-9;

    /// <summary>Copper, number of different sizes and number of changed runs of the best; null when no combination is
    /// good.</summary>
    internal sealed record Answer(double Copper, int Different, int Changed);

    public static Answer? Of(Bike bike, WireSizingOptions options, ImmutableArray<WireSize> sizes, int most)
    {
        var network = new HarnessNetwork(bike);
        ImmutableArray<Setting> settings = SettingEnumeration.Of(bike, options.Check.When);
        HarnessSolver solver = network.CreateSolver();
        // The engine runs: the lamps' current does not pass through the battery.
        solver.SetBatteryResistance(UnitsNet.ElectricResistance.Zero);
        OperatingPoint[] points = [.. settings.Select(solver.Solve)];
        var fuse = new double[bike.Runs.Length];
        foreach (FuseJudge judge in Judges(bike, settings, points, options.Check.Fuses))
            foreach (RunAmpacityCheck fed in judge.DownstreamRuns.Concat(judge.ReturnRuns))
                fuse[bike.Runs.IndexOf(fed.Run)] = Math.Max(fuse[bike.Runs.IndexOf(fed.Run)], judge.Fitted.Amperes);
        var least = new double[bike.Runs.Length];
        // A lead from the battery stands the largest fuse it leads to, and is not smaller than is usual.
        foreach (
            UnfusedRun lead in UnfusedRuns
                .Of(
                    DownstreamScopes.Of(bike, settings, TestContext.Current.CancellationToken),
                    TestContext.Current.CancellationToken
                )
                .Where(u => u.IsBatteryLead)
        )
        {
            int run = bike.Runs.IndexOf(lead.Run);
            fuse[run] = Math.Max(fuse[run], FuseJudge.ContinuousAmperes(lead.LargestFuse!, options.Check.Fuses));
            least[run] = 2;
        }

        double?[][] ratings =
        [
            .. bike.Runs.Select(r =>
                sizes
                    .Select(s =>
                        CurrentRating.Calculate(s, options.Check.Fuses.AirRoundWires(bike), r.Bundle).Current?.Amperes
                    )
                    .ToArray()
            ),
        ];
        int[][] open =
        [
            .. bike.Runs.Select(
                (_, r) =>
                    Enumerable
                        .Range(0, sizes.Length)
                        .Where(s =>
                            ratings[r][s] >= fuse[r] - 1e-9
                            && sizes[s].CopperArea >= options.MinimumArea
                            && sizes[s].CopperArea.SquareMillimeters >= least[r]
                        )
                        .ToArray()
            ),
        ];
        bool[][] judged =
        [
            .. settings.Select(s =>
                bike.Lamps.Select(l =>
                        Joined(bike, s, bike.LivePoint, l.Feed!) && Joined(bike, s, bike.EarthPoint, l.Return!)
                    )
                    .ToArray()
            ),
        ];
        Answer? best = null;
        foreach (
            (int[] choice, double copper) in Combinations(open)
                .Select(c =>
                    (c, c.Select((s, r) => sizes[s].CopperArea.SquareMillimeters * bike.Runs[r].Length.Meters).Sum())
                )
                .OrderBy(c => c.Item2)
        )
        {
            if (best is not null && copper > best.Copper * (1 + Tie))
                break;
            if (choice.Distinct().Count() > most || !IsGood(choice))
                continue;
            var answer = new Answer(
                best?.Copper ?? copper,
                choice.Distinct().Count(),
                choice.Where((s, r) => sizes[s] != bike.Runs[r].Wire).Count()
            );
            if (best is null || (answer.Different, answer.Changed).CompareTo((best.Different, best.Changed)) < 0)
                best = answer;
        }

        return best;

        bool IsGood(int[] choice)
        {
            Bike sized = bike with { Runs = [.. bike.Runs.Select((r, i) => r with { Wire = sizes[choice[i]] })] };
            solver.WarmWires(WireHeat.Of(sized));
            for (int r = 0; r < choice.Length; r++)
                solver.SetRun(
                    r,
                    sizes[choice[r]].Resistance(bike.Runs[r].Length, bike.WireTemperature),
                    bike.Runs[r].TotalJointResistance
                );
            var solved = new List<OperatingPoint>();
            for (int s = 0; s < settings.Length; s++)
            {
                OperatingPoint point;
                try
                {
                    point = solver.Solve(settings[s]);
                }
                catch (NetworkNotSolvedException)
                {
                    return false; // drivers far beyond what the battery can hold: nothing is near an allowed drop there
                }

                for (int l = 0; l < bike.Lamps.Length; l++)
                    if (
                        judged[s][l]
                        && 1
                            - point.Lamps[l].Voltage / bike.ChargingVoltage
                            - (options.CountBatteryDrop ? 0 : point.BatteryDrop / bike.ChargingVoltage)
                            > bike.AllowedDrop.DecimalFractions + 1e-10
                    )
                        return false;
                for (int r = 0; r < choice.Length; r++)
                    if (Math.Abs(point.Runs[r].Current.Amperes) > ratings[r][choice[r]] + 1e-9)
                        return false;
                solved.Add(point);
            }

            return Judges(sized, settings, solved, options.Check.Fuses)
                .All(j => j.ClearAll().All(c => c.Clears != false));
        }
    }

    // The fuses' own judges: what a fuse feeds and what it clears, without its load.
    private static IEnumerable<FuseJudge> Judges(
        Bike bike,
        ImmutableArray<Setting> settings,
        IReadOnlyList<OperatingPoint> points,
        FuseOptions options
    )
    {
        var graph = new DownstreamGraph(bike);
        ImmutableArray<FeedState> states = DownstreamGraph.States(SettingGroups.Of(bike, settings));
        return bike.Fuses.Select((f, i) => new FuseJudge(graph, f, FuseScope.Of(graph, i, states), points, options));
    }

    private static IEnumerable<int[]> Combinations(int[][] open)
    {
        IEnumerable<int[]> all =
        [
            [],
        ];
        foreach (int[] choices in open)
            all = all.SelectMany(a => choices.Select(c => (int[])[.. a, c]));
        return all;
    }

    internal static bool Joined(Bike bike, Setting setting, string from, string to)
    {
        (string A, string B)[] parts =
        [
            .. bike.Runs.Select(r => (r.From, r.To)),
            .. bike.Fuses.Select(f => (f.From!, f.To!)),
            .. bike.Switches.Where(s => s.IsClosed(setting)).Select(s => (s.From, s.To)),
        ];
        HashSet<string> reached = [from];
        while (parts.FirstOrDefault(p => reached.Contains(p.A) != reached.Contains(p.B)) is (not null, not null) next)
        {
            reached.Add(next.A);
            reached.Add(next.B);
        }

        return reached.Contains(to);
    }
}
