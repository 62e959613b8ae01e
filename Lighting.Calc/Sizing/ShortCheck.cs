namespace Lighting.Calc;

/// <summary>Whether every dead short is cleared in time with trial sizes, by the criterion of the fuses' own
/// check.</summary>
internal sealed class ShortCheck(SizingProblem problem)
{
    private readonly OperatingPoint[] _anyPoint = [problem.Network.CreateSolver().Solve(problem.Groups.First[0])];

    /// <summary>The shorts that are not shown to clear with the wires of a bike, each with its fuse.</summary>
    public IEnumerable<(ShortCircuitCheck Clearing, Fuse Fuse)> Failures(Bike bike)
    {
        var graph = new DownstreamGraph(bike);
        for (int i = 0; i < bike.Fuses.Length; i++)
        {
            var judge = new FuseJudge(
                graph,
                bike.Fuses[i],
                FuseScope.Of(graph, i, problem.FeedStates, problem.Cancellation),
                _anyPoint,
                problem.Options.Check.Fuses
            );
            foreach (ShortCircuitCheck clearing in judge.ClearAll().Where(c => c.Clears == false))
                yield return (clearing, bike.Fuses[i]);
        }
    }
}
