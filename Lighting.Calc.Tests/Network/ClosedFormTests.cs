// Circuits small enough to solve by hand.

namespace Lighting.Calc.Tests.Network;

public sealed class ClosedFormTests
{
    [Fact]
    public void Single_loop_divides_by_resistance()
    {
        var b = new CircuitBuilder();
        int minus = b.AddNode(),
            plus = b.AddNode(),
            end = b.AddNode();
        b.Source(plus, minus);
        int wire = b.AddConductor(plus, end);
        int lamp = b.AddLoad(end, minus);
        var s = new CircuitSolver(b.Build());
        s.SetSource(12, 0.1);
        s.SetConductor(wire, 0.4);
        s.SetLoad(lamp, Load.Resistor(5.5));

        Assert.Equal(SolveStatus.Solved, s.Solve());
        Assert.Equal(2, s.SourceAmperes, 1e-12);
        Assert.Equal(2, s.ConductorAmperes(wire), 1e-12);
        Assert.Equal(2, s.LoadAmperes(lamp), 1e-12);
        Assert.Equal(11.8, s.NodeVolts(plus), 1e-12);
        Assert.Equal(11, s.LoadVolts(lamp), 1e-12);
    }

    [Fact]
    public void Filament_at_its_reference_point_draws_its_reference_amperes()
    {
        var b = new CircuitBuilder();
        int minus = b.AddNode(),
            plus = b.AddNode(),
            end = b.AddNode();
        b.Source(plus, minus);
        int wire = b.AddConductor(plus, end);
        int lamp = b.AddLoad(minus, end);
        var s = new CircuitSolver(b.Build());
        s.SetSource(13.5 + 0.2 * 4, 0);
        s.SetConductor(wire, 0.2);
        s.SetLoad(lamp, Load.Filament(13.5, 2, quantity: 2));

        Assert.Equal(SolveStatus.Solved, s.Solve());
        Assert.Equal(-13.5, s.LoadVolts(lamp), 1e-10);
        Assert.Equal(-4, s.LoadAmperes(lamp), 1e-10);
    }

    [Fact]
    public void Unbalanced_bridge_matches_its_closed_form()
    {
        // Bridge of 1, 2 ohm above and 3, 4 ohm below, 5 ohm across, at 10 V.
        var b = new CircuitBuilder();
        int minus = b.AddNode(),
            plus = b.AddNode(),
            left = b.AddNode(),
            right = b.AddNode();
        b.Source(plus, minus);
        int[] arms =
        [
            b.AddConductor(plus, left),
            b.AddConductor(plus, right),
            b.AddConductor(left, minus),
            b.AddConductor(right, minus),
            b.AddConductor(left, right),
        ];
        var s = new CircuitSolver(b.Build());
        s.SetSource(10, 0);
        double[] ohms = [1, 2, 3, 4, 5];
        for (int i = 0; i < arms.Length; i++)
            s.SetConductor(arms[i], ohms[i]);

        // Thevenin across the 5 ohm arm: 7.5 − 20/3 volts behind 3/4 + 4/3 ohm.
        double across = (7.5 - 20.0 / 3) / (0.75 + 4.0 / 3 + 5);
        Assert.Equal(SolveStatus.Solved, s.Solve());
        Assert.Equal(across, s.ConductorAmperes(arms[4]), 1e-12);
    }

    [Fact]
    public void Driver_behind_a_resistance_takes_the_upper_root()
    {
        // V = E/2 + √(E²/4 − P·R)
        var b = new CircuitBuilder();
        int minus = b.AddNode(),
            plus = b.AddNode(),
            end = b.AddNode();
        b.Source(plus, minus);
        int ground = b.AddConductor(end, minus);
        int lamp = b.AddLoad(plus, end);
        var s = new CircuitSolver(b.Build());
        s.SetSource(12, 0);
        s.SetConductor(ground, 3);
        s.SetLoad(lamp, Load.Led(11.9, 3));

        Assert.Equal(SolveStatus.Solved, s.Solve());
        Assert.Equal(6 + Math.Sqrt(36 - 3 * 11.9), s.LoadVolts(lamp), 1e-9);
        Assert.False(s.HasDroppedOut(lamp));
        s.FindDropOuts();
        Assert.True(s.MayDropOut(lamp));
        Assert.Equal(6 + Math.Sqrt(36 - 3 * 11.9), s.LoadVolts(lamp), 1e-9);

        // With 0.5 ohm the lamp started dark gets 12/(1 + 0.5·11.9/9) = 7.2 V, more than its minimum: it lights.
        s.SetConductor(ground, 0.5);
        Assert.Equal(SolveStatus.Solved, s.Solve());
        s.FindDropOuts();
        Assert.False(s.MayDropOut(lamp));

        s.SetConductor(ground, 3);
        s.SetLoad(lamp, Load.Led(12.1, 3));
        Assert.Equal(SolveStatus.Solved, s.Solve());
        Assert.True(s.HasDroppedOut(lamp));
        Assert.Equal(12 / (1 + 3 * 12.1 / 9), s.LoadVolts(lamp), 1e-9);
    }

    [Fact]
    public void Merged_nodes_share_their_current_equally()
    {
        var b = new CircuitBuilder();
        int minus = b.AddNode(),
            plus = b.AddNode(),
            end = b.AddNode();
        b.Source(plus, minus);
        int first = b.AddConductor(plus, end);
        int second = b.AddConductor(end, plus);
        int self = b.AddConductor(end, end);
        int lamp = b.AddLoad(end, minus);
        var s = new CircuitSolver(b.Build());
        s.SetSource(12, 1);
        foreach (int c in new[] { first, second, self })
            s.SetConductor(c, 0);
        s.SetLoad(lamp, Load.Resistor(5));

        Assert.Equal(SolveStatus.Solved, s.Solve());
        Assert.Equal(1, s.ConductorAmperes(first), 1e-12);
        Assert.Equal(-1, s.ConductorAmperes(second), 1e-12);
        Assert.Equal(0, s.ConductorAmperes(self));
    }
}
