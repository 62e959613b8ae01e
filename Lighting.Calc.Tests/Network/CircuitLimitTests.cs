namespace Lighting.Calc.Tests.Network;

/// <summary>What a circuit, its solver and its loads refuse, and what they tell of a solution.</summary>
public class CircuitLimitTests
{
    [Fact]
    public void A_circuit_needs_a_source_and_known_nodes()
    {
        var builder = new CircuitBuilder();
        Assert.Equal((0, 1), (builder.AddNode(), builder.AddNode()));
        Assert.Equal(
            "A circuit needs its source: call Source first.",
            Assert.Throws<InvalidOperationException>(builder.Build).Message
        );
        foreach (int node in new[] { -1, 2 })
        {
            Assert.Throws<ArgumentOutOfRangeException>("node", () => builder.AddConductor(node, 0));
            Assert.Throws<ArgumentOutOfRangeException>("node", () => builder.AddConductor(0, node));
            Assert.Throws<ArgumentOutOfRangeException>("node", () => builder.AddLoad(0, node));
            Assert.Throws<ArgumentOutOfRangeException>("node", () => builder.Source(node, 0));
        }

        builder.Source(0, 1);
        Assert.Equal((0, 1), (builder.AddConductor(0, 1), builder.AddConductor(0, 1)));
        Assert.Equal((0, 1), (builder.AddLoad(0, 1), builder.AddLoad(0, 1)));
        Circuit circuit = builder.Build();
        Assert.Equal(
            (2, 0, 1, 2, 2),
            (circuit.NodeCount, circuit.Plus, circuit.Minus, circuit.ConductorCount, circuit.LoadCount)
        );
    }

    [Theory]
    [InlineData(-0.001)]
    [InlineData(double.NaN)]
    public void A_resistance_that_is_none_is_refused(double ohms)
    {
        CircuitSolver solver = Loop().Solver();
        Assert.StartsWith(
            "Resistance must be zero or more.",
            Assert.Throws<ArgumentOutOfRangeException>("ohms", () => solver.SetConductor(0, ohms)).Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Resistance must be zero or more.",
            Assert.Throws<ArgumentOutOfRangeException>("ohms", () => solver.SetSource(12, ohms)).Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Volts_that_are_none_are_refused(double volts) =>
        Assert.StartsWith(
            "Source voltage must be finite.",
            Assert.Throws<ArgumentOutOfRangeException>("emf", () => Loop().Solver().SetSource(volts, 0)).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void Nothing_is_read_before_it_is_solved_or_after_it_is_changed()
    {
        CircuitSolver solver = Loop().Solver();
        Assert.Equal(
            "The circuit must be solved first.",
            Assert.Throws<InvalidOperationException>(() => solver.NodeVolts(1)).Message
        );
        Assert.Equal(SolveStatus.Solved, solver.Solve());
        Assert.Equal(2, solver.SourceAmperes, 1e-9);
        Action[] changes =
        [
            () => solver.SetSource(12, 1),
            () => solver.SetConductor(0, 1),
            () => solver.SetLoad(0, Load.Resistor(4)),
            () => solver.SetLoadConnected(0, true),
        ];
        foreach (Action change in changes)
        {
            change();
            foreach (
                Func<object?> reading in new Func<object?>[]
                {
                    () => solver.NodeVolts(1),
                    () => solver.SourceAmperes,
                    () => solver.LoadAmperes(0),
                    () => solver.LoadVolts(0),
                    () => solver.ConductorAmperes(0),
                    () => solver.HasDroppedOut(0),
                }
            )
                Assert.Equal(
                    "The circuit must be solved before a result is read.",
                    Assert.Throws<InvalidOperationException>(reading).Message
                );
            Assert.Equal(SolveStatus.Solved, solver.Solve());
            Assert.Equal(2, solver.SourceAmperes, 1e-9);
        }
    }

    [Fact]
    public void What_may_drop_out_is_told_after_it_is_searched_for_only()
    {
        CircuitSolver solver = Loop().Solver();
        solver.Solve();
        Assert.Equal(
            "Call FindDropOuts after solving.",
            Assert.Throws<InvalidOperationException>(() => solver.MayDropOut(0)).Message
        );
        solver.FindDropOuts();
        Assert.False(solver.MayDropOut(0));
        solver.Solve();
        Assert.Throws<InvalidOperationException>(() => solver.MayDropOut(0));
    }

    [Fact]
    public void A_solution_tells_by_what_it_was_found_and_how_good_it_is()
    {
        CircuitSolver solver = Loop().Solver();
        solver.Solve();
        SolveDiagnostics found = solver.Diagnostics;
        Assert.Equal((SolveStages.Newton, true), (found.Tried, found.Holdable));
        Assert.InRange(found.Iterations, 1, 12);
        Assert.InRange(found.WorstResidualAmperes, 0, 1e-9);
        Assert.InRange(found.PowerImbalance, 0, 1e-9);
        Assert.Contains(found.WorstNode, new[] { 1, 2 });
        // A driver behind 3 Ω that cannot hold 12.1 W on 12 V is dark, which Newton's method does not answer for.
        var dark = new TestNetwork(3, 1, 0, 12, 0, [new(1, 2, 3)], [new(2, 0, Load.Led(12.1, 3))]);
        solver = dark.Solver();
        Assert.Equal(SolveStatus.Solved, solver.Solve());
        Assert.Equal(SolveStages.Newton | SolveStages.Descent, solver.Diagnostics.Tried);
    }

    // What the way by the descent would mend, and hide: these are all within reach of Newton's method, and quickly.
    [Fact]
    public void Harnesses_of_lamps_on_and_off_are_solved_by_Newtons_method_alone()
    {
        var random = new Random(7);
        for (int n = 0; n < 100; n++)
        {
            TestNetwork network = RandomNetworks.Harness(
                random,
                2 + random.Next(30),
                3,
                [LampType.Filament, LampType.Resistor]
            );
            // Every third lamp is switched off at its feed, so that it hangs between grounds.
            network = network with
            {
                Loads =
                [
                    .. network.Loads.Select(
                        (l, i) => i % 3 == 0 && i > 0 ? l with { Feed = network.Loads[i - 1].Return } : l
                    ),
                ],
            };
            CircuitSolver solver = network.Solved();
            Assert.Equal(SolveStages.Newton, solver.Diagnostics.Tried);
            Assert.InRange(solver.Diagnostics.Iterations, 0, 14);
        }
    }

    [Fact]
    public void A_dead_short_is_told_at_the_source()
    {
        CircuitSolver solver = new TestNetwork(2, 1, 0, 12, 0, [new(1, 0, 0)], []).Solver();
        Assert.Equal(SolveStatus.DeadShort, solver.Solve());
        Assert.Equal(
            (SolveStages.None, 0, 1, false),
            (
                solver.Diagnostics.Tried,
                solver.Diagnostics.Iterations,
                solver.Diagnostics.WorstNode,
                solver.Diagnostics.Holdable
            )
        );
        Assert.Equal(double.PositiveInfinity, solver.Diagnostics.WorstResidualAmperes);
        Assert.Equal(double.PositiveInfinity, solver.Diagnostics.PowerImbalance);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.PositiveInfinity)]
    public void A_load_whose_numbers_are_out_of_range_is_refused(double number)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Load.Filament(number, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => Load.Led(5, number));
        Assert.Throws<ArgumentOutOfRangeException>(() => Load.LedResistor(9, number));
        Assert.Throws<ArgumentOutOfRangeException>(() => Load.Resistor(number));
        Assert.Throws<ArgumentOutOfRangeException>(() => Load.Fixed(1, number));
        if (number == 0)
            return;
        Assert.Throws<ArgumentOutOfRangeException>(() => Load.Filament(12, number));
        Assert.Throws<ArgumentOutOfRangeException>(() => Load.Led(number, 9));
        Assert.Throws<ArgumentOutOfRangeException>(() => Load.Fixed(number));
    }

    [Fact]
    public void A_load_may_take_nothing() => Assert.Equal(0, Load.Fixed(0).At(12).CurrentAmperes);

    [Fact]
    public void A_load_turned_twice_is_as_it_was()
    {
        Load load = Load.Led(5, 6);
        Assert.True(load.Reverse().Reversed);
        Assert.Equal(load, load.Reverse().Reverse());
        Assert.NotEqual(load, load.Reverse());
    }

    // 12 V behind 1 Ω, a wire of 1 Ω, a resistor of 4 Ω: 2 A.
    private static TestNetwork Loop() => new(3, 1, 0, 12, 1, [new(1, 2, 1)], [new(2, 0, Load.Resistor(4))]);
}
