// Cases at the edge, each with its one clear outcome.

namespace Lighting.Calc.Tests.Network;

public sealed class DegenerateCaseTests
{
    private static readonly Load s_bulb = Load.Filament(12, 2);

    [Fact]
    public void Dead_short_without_any_resistance_is_said_and_not_read()
    {
        CircuitSolver s = Loop(12, 0, 0, s_bulb, shortOhms: 0).Solver();
        Assert.Equal(SolveStatus.DeadShort, s.Solve());
        Assert.Throws<InvalidOperationException>(() => s.NodeVolts(1));
        Assert.Throws<InvalidOperationException>(() => s.SourceAmperes);
    }

    [Theory]
    [InlineData(0.01, 0, 1200)]
    [InlineData(0, 0.01, 1200)]
    [InlineData(0, 1e-6, 12e6)]
    [InlineData(0.005, 0.005, 1200)]
    public void Dead_short_with_resistance_has_its_current(double sourceOhms, double shortOhms, double expected)
    {
        CircuitSolver s = Loop(12, sourceOhms, 1e9, s_bulb, shortOhms).Solver();
        Assert.Equal(SolveStatus.Solved, s.Solve());
        Assert.Equal(1, s.SourceAmperes / expected, 1e-6);
        Assert.Equal(1, s.ConductorAmperes(1) / expected, 1e-6);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.01)]
    public void Source_without_volts_or_out_of_circuit_leaves_all_dead(double sourceOhms)
    {
        foreach (
            TestNetwork n in new[]
            {
                Loop(0, sourceOhms, 0.1, s_bulb),
                Loop(12, double.PositiveInfinity, 0.1, s_bulb),
                Loop(0, 0, 0, s_bulb, 0),
            }
        )
        {
            CircuitSolver s = n.Solver();
            Assert.Equal(SolveStatus.Solved, s.Solve());
            Assert.Equal(0, s.SourceAmperes);
            Assert.Equal(0, s.LoadAmperes(0));
            Assert.Equal(0, s.NodeVolts(2));
        }
    }

    [Fact]
    public void Open_switch_leaves_the_branch_at_zero_volts()
    {
        CircuitSolver s = Loop(12, 0.1, double.PositiveInfinity, Load.Led(5, 6)).Solved();
        Assert.Equal(12, s.NodeVolts(1));
        Assert.Equal(0, s.NodeVolts(2));
        Assert.Equal(0, s.LoadVolts(0));
        Assert.False(s.HasDroppedOut(0));
        Assert.Equal(0, s.SourceAmperes);
    }

    [Fact]
    public void Open_ground_lifts_the_lamp_to_source_volts_without_current()
    {
        var n = new TestNetwork(
            4,
            1,
            0,
            12,
            0.1,
            [new(1, 2, 0.1), new(3, 0, double.PositiveInfinity)],
            [new(2, 3, s_bulb), new(2, 3, Load.Led(5, 6))]
        );
        CircuitSolver s = n.Solved();
        Assert.Equal(12, s.NodeVolts(3));
        Assert.Equal(0, s.LoadVolts(0));
    }

    [Fact]
    public void Floating_part_reads_zero_volts()
    {
        var n = new TestNetwork(
            4,
            1,
            0,
            12,
            0.1,
            [new(2, 3, 0.1), new(2, 3, 0)],
            [new(2, 3, s_bulb), new(1, 0, s_bulb)]
        );
        CircuitSolver s = n.Solved();
        Assert.Equal(0, s.NodeVolts(2));
        Assert.Equal(0, s.NodeVolts(3));
        Assert.True(s.LoadAmperes(1) > 1.9);
    }

    [Fact]
    public void Zero_length_run_and_self_loop_are_harmless()
    {
        TestNetwork n = Loop(12, 0.1, 0, s_bulb) with { Conductors = [new(1, 2, 0), new(2, 2, 0.5), new(2, 2, 0)] };
        CircuitSolver s = n.Solved();
        Assert.Equal(s.LoadAmperes(0), s.ConductorAmperes(0), 1e-12);
        Assert.Equal(0, s.ConductorAmperes(1));
        Assert.Equal(0, s.ConductorAmperes(2));
    }

    [Fact]
    public void Zero_ohm_ring_is_the_limit_of_small_equal_resistances()
    {
        int[][] pairs =
        [
            [1, 2],
            [2, 3],
            [3, 4],
            [4, 1],
            [1, 3],
            [1, 3],
        ];
        TestNetwork Ring(double ohms) =>
            new(
                5,
                1,
                0,
                12,
                0.1,
                [.. pairs.Select(p => new TestConductor(p[0], p[1], ohms))],
                [new(2, 0, s_bulb), new(3, 0, s_bulb), new(4, 0, Load.Fixed(1))]
            );
        CircuitSolver merged = Ring(0).Solved();
        CircuitSolver small = Ring(1e-6).Solved();
        for (int i = 0; i < pairs.Length; i++)
            Assert.Equal(small.ConductorAmperes(i), merged.ConductorAmperes(i), 1e-5);
    }

    [Fact]
    public void Two_leads_from_battery_plus_share_by_resistance()
    {
        TestNetwork n = Loop(12, 0, 0.1, s_bulb) with { Conductors = [new(1, 2, 0.1), new(1, 2, 0.3)] };
        CircuitSolver s = n.Solved();
        Assert.Equal(3 * s.ConductorAmperes(1), s.ConductorAmperes(0), 1e-10);
    }

    [Fact]
    public void Micro_ohms_and_mega_ohms_live_in_one_network()
    {
        var random = new Random(1);
        for (int i = 0; i < 300; i++)
        {
            TestNetwork n = RandomNetworks.Harness(random, 1 + random.Next(20), 5, Enum.GetValues<Calc.LampType>());
            n = n with
            {
                Conductors =
                [
                    .. n.Conductors.Select(c =>
                        random.Next(3) == 0 ? c with { Ohms = Math.Pow(10, -6 + 12 * random.NextDouble()) } : c
                    ),
                ],
            };
            n.Solved();
        }
    }

    [Fact]
    public void Bright_point_just_inside_the_edge_is_held_and_just_outside_is_not()
    {
        // The driver's limit is P = E²/(4·R): 36 W behind 1 ohm at 12 V.
        foreach (double nearness in new[] { 1e-2, 1e-4, 1e-6 })
        {
            CircuitSolver inside = Loop(12, 0, 1, Load.Led(36 * (1 - nearness), 2)).Solved();
            Assert.False(inside.HasDroppedOut(0));
            CircuitSolver outside = Loop(12, 0, 1, Load.Led(36 * (1 + nearness), 2)).Solved();
            Assert.True(outside.HasDroppedOut(0));
        }
    }

    [Fact]
    public void Positive_earth_and_reversed_leds()
    {
        // Frame on the source's plus; the lamp's own feed side is the lower one.
        var n = new TestNetwork(
            3,
            1,
            0,
            12,
            0.1,
            [new(0, 2, 0.1)],
            [
                new(2, 1, s_bulb),
                new(2, 1, Load.Led(5, 6)),
                new(2, 1, Load.Led(5, 6).Reverse()),
                new(2, 1, Load.Fixed(1)),
                new(2, 1, Load.LedResistor(5, 9).Reverse()),
            ]
        );
        CircuitSolver s = n.Solved();
        Assert.True(s.LoadAmperes(0) < -1.9);
        Assert.Equal(0, s.LoadAmperes(1), 1e-5);
        Assert.Equal(5 / s.LoadVolts(2), s.LoadAmperes(2), 1e-9);
        Assert.Equal(0, s.LoadAmperes(3), 1e-5);
        Assert.True(s.LoadAmperes(4) < -0.6);
    }

    [Fact]
    public void Fixed_loads_in_series_settle_on_the_smaller()
    {
        var n = new TestNetwork(3, 1, 0, 12, 0.1, [], [new(1, 2, Load.Fixed(2)), new(2, 0, Load.Fixed(1))]);
        CircuitSolver s = n.Solved();
        Assert.Equal(1, s.SourceAmperes, 1e-9);
    }

    [Fact]
    public void Wrong_values_are_refused()
    {
        CircuitSolver s = Loop(12, 0.1, 0.1, s_bulb).Solver();
        Assert.Throws<ArgumentOutOfRangeException>(() => s.SetConductor(0, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => s.SetConductor(0, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => s.SetSource(double.NaN, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Load.Led(5, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Load.Filament(12, -1));
        Assert.Throws<InvalidOperationException>(() => s.NodeVolts(0));
    }

    /// <summary>Plus 1, wire to 2, load from 2 to minus 0, and a second conductor from plus to minus.</summary>
    private static TestNetwork Loop(
        double emf,
        double sourceOhms,
        double wireOhms,
        Load load,
        double shortOhms = double.PositiveInfinity
    ) => new(3, 1, 0, emf, sourceOhms, [new(1, 2, wireOhms), new(1, 0, shortOhms)], [new(2, 0, load)]);
}
