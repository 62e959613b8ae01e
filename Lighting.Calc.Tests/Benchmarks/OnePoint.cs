// One operating point of a 40-point harness with 25 mixed lamps and 3 loops, against the dense reference of the tests.
using BenchmarkDotNet.Attributes;
using Lighting.Calc.Tests.Network;

namespace Lighting.Calc.Benchmarks;

[MemoryDiagnoser]
public class OnePoint
{
    private readonly TestNetwork network = LargeHarness.Create(40);
    private CircuitSolver solver = null!;
    private int turn;

    [GlobalSetup]
    public void Setup() => solver = network.Solver();

    [Benchmark(Baseline = true)]
    public double DenseModifiedNodal() => DenseNewton.Solve(network)[^1];

    [Benchmark]
    public double DenseNodal() => DenseNodalNewton.Solve(network)[^1];

    [Benchmark]
    public double Cold() => Solve(false);

    [Benchmark]
    public double Warm() => Solve(true);

    // The source moves by 0.1 V each time, so that no solve repeats the one before.
    private double Solve(bool warm)
    {
        turn ^= 1;
        solver.SetSource(13.5 - 0.1 * turn, 0.01);
        if (solver.Solve(warm) != SolveStatus.Solved)
            throw new InvalidOperationException("Not solved.");
        return solver.SourceAmperes;
    }
}
