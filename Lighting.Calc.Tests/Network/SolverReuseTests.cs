// Solving many times with changed values: nothing allocated, nothing remembered that should not be.

namespace Lighting.Calc.Tests.Network;

public sealed class SolverReuseTests
{
    private static readonly LampType[] s_allKinds = Enum.GetValues<LampType>();

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Solving_again_allocates_nothing(bool warm)
    {
        TestNetwork n = LargeHarness.Create(40);
        CircuitSolver solver = n.Solver();
        Step(0);
        Step(1);
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < 100; i++)
            Step(i);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);

        void Step(int i)
        {
            solver.SetSource(12 + 0.01 * i, 0.01);
            solver.SetConductor(2, 0.01 + 0.001 * i);
            solver.SetConductor(5, i % 2 == 0 ? double.PositiveInfinity : 0.02); // a switch
            solver.SetLoad(3, i % 2 == 0 ? Load.Filament(12, 1) : Load.Led(6, 5));
            if (solver.Solve(warm) != SolveStatus.Solved)
                throw new InvalidOperationException("Not solved.");
        }
    }

    [Fact]
    public void A_drop_out_and_its_search_allocate_nothing_on_repetition()
    {
        var n = new TestNetwork(
            3,
            1,
            0,
            12,
            0.05,
            [new(2, 0, 1)],
            [new(1, 2, Load.Led(34, 3)), new(1, 2, Load.Led(1, 3))]
        );
        CircuitSolver solver = n.Solver();
        Step(0);
        Step(1);
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < 20; i++)
            Step(i);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);

        void Step(int i)
        {
            solver.SetLoad(0, Load.Led(i % 2 == 0 ? 36 : 33, 3));
            if (solver.Solve() != SolveStatus.Solved || solver.HasDroppedOut(0) != (i % 2 == 0))
                throw new InvalidOperationException("Not as expected.");
            solver.FindDropOuts();
        }
    }

    /// <summary>A solver that has been through many states answers as a new one does.</summary>
    [Fact]
    public void Answers_do_not_depend_on_what_was_solved_before()
    {
        var random = new Random(3);
        TestNetwork n = RandomNetworks.Anything(random, 12, 20, 14, s_allKinds);
        CircuitSolver used = n.Solver();
        for (int step = 0; step < 2000; step++)
        {
            TestNetwork other = RandomNetworks.Anything(random, 12, 20, 14, s_allKinds);
            n = n with
            {
                Emf = other.Emf,
                SourceOhms = other.SourceOhms,
                Conductors =
                [
                    .. n.Conductors.Select(
                        (c, i) => random.Next(3) == 0 ? c with { Ohms = other.Conductors[i].Ohms } : c
                    ),
                ],
                Loads = [.. n.Loads.Select((l, i) => random.Next(3) == 0 ? l with { Law = other.Loads[i].Law } : l)],
            };
            n.Apply(used);
            CircuitSolver fresh = n.Solver();
            SolveStatus expected = fresh.Solve();
            Assert.Equal(expected, used.Solve(warmStart: step % 2 == 0));
            if (expected != SolveStatus.Solved)
                continue;
            Physics.AssertHolds(n, used);
            for (int v = 0; v < n.Nodes; v++)
                Assert.Equal(fresh.NodeVolts(v), used.NodeVolts(v), 1e-6);
        }
    }

    [Fact]
    public void A_disconnected_load_carries_nothing_and_comes_back()
    {
        var n = new TestNetwork(
            3,
            1,
            0,
            12,
            0.1,
            [new(1, 2, 0.5)],
            [new(2, 0, Load.Resistor(5)), new(2, 0, Load.Filament(12, 1))]
        );
        CircuitSolver solver = n.Solver();
        solver.Solve();
        double both = solver.SourceAmperes;
        solver.SetLoadConnected(1, false);
        Assert.Equal(SolveStatus.Solved, solver.Solve());
        Assert.Equal(0, solver.LoadAmperes(1));
        Assert.Equal(12 / 5.6, solver.SourceAmperes, 1e-12);
        Assert.Equal(solver.LoadVolts(0), solver.LoadVolts(1));
        solver.SetLoadConnected(1, true);
        solver.Solve();
        Assert.Equal(both, solver.SourceAmperes, 1e-12);
    }

    [Fact]
    public void Solvers_on_one_circuit_work_side_by_side()
    {
        TestNetwork n = LargeHarness.Create(80);
        Circuit circuit = n.Circuit();
        var volts = new double[64];
        Parallel.For(
            0,
            volts.Length,
            i =>
            {
                var solver = new CircuitSolver(circuit);
                n.Apply(solver);
                solver.SetConductor(i % 8, double.PositiveInfinity);
                solver.SetSource(10 + i / 8, 0.01);
                Assert.Equal(SolveStatus.Solved, solver.Solve());
                volts[i] = solver.NodeVolts(n.Nodes - 1);
            }
        );
        for (int i = 0; i < volts.Length; i++)
        {
            CircuitSolver alone = (
                n with
                {
                    Emf = 10 + i / 8,
                    SourceOhms = 0.01,
                    Conductors =
                    [
                        .. n.Conductors.Select((c, k) => k == i % 8 ? c with { Ohms = double.PositiveInfinity } : c),
                    ],
                }
            ).Solver();
            alone.Solve();
            Assert.Equal(alone.NodeVolts(n.Nodes - 1), volts[i], 1e-9);
        }
    }
}
