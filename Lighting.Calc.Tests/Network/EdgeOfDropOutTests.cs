namespace Lighting.Calc.Tests.Network;

/// <summary>Circuits of several drivers at the edge at which one of them must drop out.</summary>
public class EdgeOfDropOutTests
{
    [Fact]
    public void Three_pairs_of_drivers_on_six_volts_find_a_point_that_can_be_held()
    {
        var builder = new CircuitBuilder();
        int plus = builder.AddNode(),
            minus = builder.AddNode(),
            fused = builder.AddNode(),
            feed1 = builder.AddNode(),
            frame = builder.AddNode(),
            feed3 = builder.AddNode();
        builder.Source(plus, minus);
        int fuse = builder.AddConductor(plus, fused),
            run1 = builder.AddConductor(feed1, fused),
            ground = builder.AddConductor(frame, minus),
            run3 = builder.AddConductor(fused, feed3);
        int small = builder.AddLoad(feed1, minus),
            large = builder.AddLoad(feed1, frame),
            third = builder.AddLoad(feed3, frame);
        var solver = new CircuitSolver(builder.Build());
        solver.SetSource(6.9, 0.015);
        solver.SetConductor(fuse, 0);
        solver.SetConductor(run1, 0.0196389 + 0.010);
        solver.SetConductor(ground, 0.0412372);
        solver.SetConductor(run3, 0.00223556 + 0.004);
        solver.SetLoad(small, Load.Led(23, 3, 2));
        solver.SetLoad(large, Load.Led(54, 3, 2));
        solver.SetLoad(third, Load.Led(15, 3, 2));
        Assert.Equal(SolveStatus.Solved, solver.Solve());
        Assert.True(solver.Diagnostics.Holdable);
    }

    // Just past the power at which the drivers can all stay lit the old way down nearly stands still: there it was that
    // no point was found. The edge of each random circuit is found by halving, and both its sides are solved close to
    // it.
    [Theory]
    [InlineData(3, Traits = ["time", "long"])]
    [InlineData(4, Traits = ["time", "long"])]
    [InlineData(5, Traits = ["time", "long"])]
    [InlineData(6)]
    public void Close_to_the_edge_on_both_sides_a_point_is_found(double minimumVolts)
    {
        int edges = 0;
        for (int seed = 0; seed < 150; seed++)
        {
            CircuitSolver solver = RandomStar(seed, minimumVolts, out double[] watts, out int[] drivers);
            bool AllLit(double scale)
            {
                for (int i = 0; i < drivers.Length; i++)
                    solver.SetLoad(drivers[i], Load.Led(watts[i] * scale, minimumVolts));
                Assert.True(
                    solver.Solve() == SolveStatus.Solved,
                    $"seed {seed}, scale {scale:R}: {solver.Diagnostics}"
                );
                Assert.True(solver.Diagnostics.Holdable);
                return drivers.All(d => !solver.HasDroppedOut(d));
            }

            double lit = 1e-3,
                dark = 1e3;
            if (!AllLit(lit) || AllLit(dark))
                continue;
            edges++;
            while (dark - lit > 1e-14 * dark && (lit + dark) / 2 is { } middle && middle > lit && middle < dark)
                (lit, dark) = AllLit(middle) ? (middle, dark) : (lit, middle);
            foreach (double near in new[] { 1e-2, 1e-4, 1e-6, 1e-8, 1e-10, 1e-12 })
            {
                Assert.False(AllLit(dark * (1 + near)));
                Assert.True(AllLit(lit * (1 - near)));
            }
        }

        Assert.True(edges > 100, $"only {edges} circuits have an edge");
    }

    private static CircuitSolver RandomStar(int seed, double minimumVolts, out double[] watts, out int[] drivers)
    {
        var random = new Random(seed);
        int count = random.Next(1, 5);
        var builder = new CircuitBuilder();
        int plus = builder.AddNode(),
            minus = builder.AddNode(),
            frame = builder.AddNode();
        builder.Source(plus, minus);
        var runs = new List<int> { builder.AddConductor(frame, minus) };
        drivers = new int[count];
        watts = new double[count];
        int at = plus;
        for (int i = 0; i < count; i++)
        {
            int feed = builder.AddNode();
            runs.Add(builder.AddConductor(random.Next(3) == 0 ? plus : at, feed));
            drivers[i] = builder.AddLoad(feed, random.Next(3) == 0 ? minus : frame);
            watts[i] = 2 + 40 * random.NextDouble();
            at = feed;
        }

        int filament = builder.AddLoad(at, frame);
        var solver = new CircuitSolver(builder.Build());
        solver.SetSource(minimumVolts * (1.2 + 2 * random.NextDouble()), 0.02 * random.NextDouble());
        foreach (int run in runs)
            solver.SetConductor(run, 0.005 + 0.3 * random.NextDouble());
        solver.SetLoad(filament, Load.Filament(13.5, 0.1 + 2 * random.NextDouble()));
        return solver;
    }
}
