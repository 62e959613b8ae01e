// The same density of lamps and loops at 40, 400 and 4,000 points.
using BenchmarkDotNet.Attributes;
using Lighting.Calc.Tests.Network;

namespace Lighting.Calc.Benchmarks;

[MemoryDiagnoser]
public class Growth
{
    private CircuitSolver solver = null!;
    private int turn;

    [Params(40, 400, 4000)]
    public int Points { get; set; }

    [GlobalSetup]
    public void Setup() => solver = LargeHarness.Create(Points).Solver();

    [Benchmark]
    public double Cold() => Solve(false);

    [Benchmark]
    public double Warm() => Solve(true);

    [Benchmark]
    public bool BuildAndSolve() => LargeHarness.Create(Points).Solver().Solve() == SolveStatus.Solved;

    private double Solve(bool warm)
    {
        turn ^= 1;
        solver.SetSource(13.5 - 0.1 * turn, 0.01 * Math.Min(1, 40.0 / Points));
        if (solver.Solve(warm) != SolveStatus.Solved)
            throw new InvalidOperationException("Not solved.");
        return solver.SourceAmperes;
    }
}
