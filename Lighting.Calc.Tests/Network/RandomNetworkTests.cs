// Random trees and loops of all load kinds: Kirchhoff, power balance and the independent reference.
using FsCheck.Xunit;

namespace Lighting.Calc.Tests.Network;

public sealed class RandomNetworkTests
{
    private static readonly LampType[] s_allKinds = Enum.GetValues<LampType>();

    [Property(MaxTest = 300)]
    public void Kirchhoff_and_power_balance_hold(int seed)
    {
        var random = new Random(seed);
        int lamps = 1 + random.Next(200);
        RandomNetworks
            .Harness(random, lamps, random.Next(1 + lamps / 4), s_allKinds, scale: 3 * random.NextDouble())
            .Solved();
    }

    [Fact]
    public void Any_circuit_ends_at_a_point_it_can_hold_or_in_a_dead_short()
    {
        var random = new Random(5);
        int shorts = 0;
        for (int n = 0; n < 5000; n++)
        {
            int nodes = 2 + random.Next(14);
            TestNetwork network = RandomNetworks.Anything(
                random,
                nodes,
                random.Next(2 * nodes),
                random.Next(2 * nodes),
                s_allKinds
            );
            CircuitSolver solver = network.Solver();
            SolveStatus status = solver.Solve();
            Assert.True(status != SolveStatus.NotConverged, $"Network {n}: {solver.Diagnostics}");
            if (status == SolveStatus.Solved)
                Physics.AssertHolds(network, solver);
            else
                shorts++;
        }

        Assert.InRange(shorts, 1, 500);
    }

    [Property(MaxTest = 200)]
    public void Volts_agree_with_dense_modified_nodal_analysis(int seed)
    {
        var random = new Random(seed);
        int lamps = 1 + random.Next(30);
        TestNetwork network = RandomNetworks.Harness(random, lamps, random.Next(6), s_allKinds);
        CircuitSolver solver = network.Solved();
        double[] expected = DenseNewton.Solve(network);
        for (int v = 0; v < network.Nodes; v++)
            Assert.Equal(expected[v], solver.NodeVolts(v), 1e-6);
    }

    [Theory]
    [InlineData(100)]
    [InlineData(200)]
    public void Volts_of_a_large_network_agree_too(int lamps)
    {
        TestNetwork network = RandomNetworks.Harness(new Random(lamps), lamps, 20, s_allKinds);
        CircuitSolver solver = network.Solved();
        double[] expected = DenseNewton.Solve(network);
        for (int v = 0; v < network.Nodes; v++)
            Assert.Equal(expected[v], solver.NodeVolts(v), 1e-6);
    }

    [Property(MaxTest = 200)]
    public void A_warm_start_gives_the_answer_of_a_cold_one(int seed)
    {
        var random = new Random(seed);
        TestNetwork first = RandomNetworks.Harness(random, 1 + random.Next(40), 3, s_allKinds);
        TestNetwork second = first with
        {
            Emf = first.Emf * (0.7 + 0.5 * random.NextDouble()),
            Conductors = [.. first.Conductors.Select(c => c with { Ohms = c.Ohms * (0.5 + random.NextDouble()) })],
        };
        CircuitSolver warm = first.Solved();
        second.Apply(warm);
        Assert.Equal(SolveStatus.Solved, warm.Solve(warmStart: true));
        Physics.AssertHolds(second, warm);
        CircuitSolver cold = second.Solved();
        for (int v = 0; v < first.Nodes; v++)
            Assert.Equal(cold.NodeVolts(v), warm.NodeVolts(v), 1e-9);
    }
}
