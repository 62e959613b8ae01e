// 10,000 operating points of the 40-point harness: source volts and one resistance change from point to point.
using BenchmarkDotNet.Attributes;
using Lighting.Calc.Tests.Network;

namespace Lighting.Calc.Benchmarks;

[MemoryDiagnoser]
public class Sweep
{
    private const int Points = 10_000;

    private CircuitSolver solver = null!;

    [GlobalSetup]
    public void Setup() => solver = LargeHarness.Create(40).Solver();

    /// <summary>The time is that of one of the points.</summary>
    [Benchmark(OperationsPerInvoke = Points)]
    public double PointOfSweep()
    {
        double sum = 0;
        for (int i = 0; i < Points; i++)
        {
            solver.SetSource(11 + 4.0 * (i / 100) / 100, 0.01);
            solver.SetConductor(0, 0.005 + 0.001 * (i % 100));
            if (solver.Solve(warmStart: true) != SolveStatus.Solved)
                throw new InvalidOperationException("Not solved.");
            sum += solver.SourceAmperes;
        }

        return sum;
    }
}
