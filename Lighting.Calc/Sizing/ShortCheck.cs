using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Whether every dead short is cleared in time with trial sizes, by the criterion of the fuses' own check.</summary>
internal sealed class ShortCheck
{
    private const double MostOfRating = 1e6;
    private readonly SizingProblem _problem;
    private readonly OperatingPoint[] _anyPoint;

    public ShortCheck(SizingProblem problem)
    {
        _problem = problem;
        _anyPoint = [problem.Network.CreateSolver().Solve(problem.Settings[0])];
    }

    /// <summary>The shorts that are not shown to clear, each with its fuse's index.</summary>
    public IEnumerable<UnclearedShort> Failures(int[] sizes) => Failures(_problem.With(sizes));

    /// <summary>The same for the bike with any wires.</summary>
    public IEnumerable<UnclearedShort> Failures(Bike bike)
    {
        var graph = new DownstreamGraph(bike);
        ImmutableArray<FeedState> states = DownstreamGraph.States(SettingGroups.Of(bike, _problem.Settings));
        for (int i = 0; i < graph.Bike.Fuses.Length; i++)
        {
            var judge = new FuseJudge(graph, graph.Bike.Fuses[i], FuseScope.Of(graph, i, states, _problem.Cancellation), _anyPoint, _problem.Options.Fuses);
            foreach (ShortCircuitCheck clearing in judge.ClearAll().Where(c => !c.Clears))
                yield return new UnclearedShort(clearing, graph.Bike.Fuses[i], judge.LongestShortSeconds);
        }
    }

    /// <summary>
    /// The condition that an uncleared short puts on all choices: the wires of its way together no more than the fuse needs.
    /// Null where a loop gives the short another way.
    /// </summary>
    public DropRow? Condition(UnclearedShort failure, int[] sizes)
    {
        Bike bike = _problem.Bike;
        var state = SizingState.Of(_problem.Network, failure.Clearing.Setting);
        int nodes = _problem.Network.Points.Length;
        if (state.IsShorted || new[] { bike.LivePoint, bike.EarthPoint }.Any(p => new SideGraph(state, nodes, _problem.Network.NodeOf(p)).LoopRuns.Count > 0))
            return null;
        if (LeastAmperes(failure) is not { } least)
            return null;
        var names = failure.Clearing.Path.ToHashSet(Name.Comparer);
        HarnessGraph graph = _problem.Network.Graph;
        if (failure.Clearing.ReturnFrom is { } from)
            names.UnionWith(graph.From(graph.NumberOf(from), graph.Switches.ClosedIn(failure.Clearing.Setting)).PathTo(graph.Earth).Select(p => p.Name));
        int[] runs = [.. Enumerable.Range(0, bike.Runs.Length).Where(r => names.Contains(bike.Runs[r].Name))];
        double wires = runs.Sum(r => _problem.Ohms[r][sizes[r]]);
        double rest = failure.Clearing.LoopResistance.Ohms - wires;
        return new DropRow(runs, [.. runs.Select(_ => 1.0)], bike.BatteryVoltage.Volts / least * (1 + 1e-9) - rest);
    }

    // The opening time falls with the current, so the least current that opens the fuse in time is found by halving.
    private double? LeastAmperes(UnclearedShort failure)
    {
        double rating = FuseJudge.ContinuousAmperes(failure.Fuse, _problem.Options.Fuses);
        bool Opens(double amperes) => OpeningTime.Calculate(failure.Fuse.Style, ElectricCurrent.FromAmperes(rating), ElectricCurrent.FromAmperes(amperes)).Slowest is { } s && s.Seconds <= failure.LongestSeconds;
        double low = rating, high = rating * MostOfRating;
        if (!Opens(high))
            return null;
        while (high - low > 1e-10 * high)
        {
            double middle = Math.Sqrt(low * high);
            (low, high) = Opens(middle) ? (low, middle) : (middle, high);
        }

        return low;
    }
}
