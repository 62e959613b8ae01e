// The fast method by itself, and the check that every answer must pass, on circuits worked out by hand.
using static Lighting.Calc.Tests.Network.Equations;
using Answer = Lighting.Calc.StableOperatingPoint;

namespace Lighting.Calc.Tests.Network;

public sealed class NewtonMethodTests
{
    [Fact]
    public void Straight_lines_are_met_in_one_step()
    {
        NodalSystem circuit = new TestNetwork(
            3,
            1,
            0,
            12,
            1,
            [new(1, 2, 2)],
            [new(2, 0, Load.Resistor(3)), new(1, 0, Load.Resistor(6))]
        ).Equations();
        NewtonMethod.StartCold(circuit);
        Assert.True(NewtonMethod.TryReach(circuit));
        Assert.Equal(1, circuit.Solutions);
        // 5 ohm and 6 ohm in parallel are 30/11, behind 1 ohm: 12·30/41 V.
        Assert.Equal(12 * 30 / 41.0, Volts(circuit, 1), 1e-12);
        Assert.Equal(12 * 18 / 41.0, Volts(circuit, 2), 1e-12);
    }

    [Fact]
    public void Curved_laws_are_met_before_it_is_said_that_they_are()
    {
        // In the order of the bank: a filament, a resistor, a driver.
        NodalSystem circuit = new TestNetwork(
            4,
            1,
            0,
            14,
            0,
            [new(1, 2, 0.3), new(1, 3, 0.4)],
            [new(2, 0, Load.Filament(12, 4)), new(3, 0, Load.Resistor(9)), new(3, 0, Load.Led(20, 6))]
        ).Equations();
        NewtonMethod.StartCold(circuit);
        Assert.True(NewtonMethod.TryReach(circuit));
        Assert.InRange(circuit.UpdateResidual(), 0, 1e-10);
        Assert.InRange(circuit.Solutions, 2, 6);
        double volts = Volts(circuit, 3);
        Assert.Equal(20 / volts + volts / 9, (14 - volts) / 0.4, 1e-9);
    }

    [Theory]
    [InlineData(40, 2, 5)] // no point with the driver lit is left: 1 − 40/25 is negative
    [InlineData(30, 11, 12)] // leads to volts under the driver's minimum
    public void Where_the_bright_point_is_not_sure_none_is_claimed(double watts, double minimumVolts, double start)
    {
        NodalSystem circuit = BehindAnOhm(Load.Led(watts, minimumVolts)).Equations();
        circuit.Loads.Volts[0] = start;
        Assert.False(NewtonMethod.TryReach(circuit));
        Assert.InRange(circuit.Solutions, 1, 3);
    }

    [Fact]
    public void Polishing_evaluates_the_loads_at_the_volts_given()
    {
        NodalSystem circuit = BehindAnOhm(Load.Filament(12, 3)).Equations();
        Put(circuit, (1, 9.9));
        NewtonMethod.Polish(circuit);
        double volts = Volts(circuit, 1);
        Assert.Equal(12 - volts, 3 * Math.Pow(volts / 12, 0.55), 1e-10);
        Assert.InRange(circuit.Solutions, 1, 5);
    }

    [Fact]
    public void Polishing_leaves_volts_alone_from_which_no_step_leads_down()
    {
        NodalSystem circuit = BehindAnOhm(Load.Led(40, 2)).Equations();
        Put(circuit, (1, 5));
        NewtonMethod.Polish(circuit);
        Assert.Equal(5, Volts(circuit, 1));
        Assert.Equal(1, circuit.Solutions);
    }

    /// <remarks>3 ohm behind 1 ohm at 12 V: 9 V, and 4/3 A of residual for each volt beside it.</remarks>
    [Theory]
    [InlineData(0, true)]
    [InlineData(7e-10, true)]
    [InlineData(8e-10, false)]
    [InlineData(-1e-6, false)]
    public void Answer_whose_currents_do_not_balance_to_a_nanoampere_is_refused(double beside, bool accepted)
    {
        NodalSystem circuit = At(BehindAnOhm(Load.Resistor(3)), 9, beside);
        Assert.Equal(accepted, Answer.Check(circuit, SolveStages.Newton, out SolveDiagnostics found));
        Assert.Equal(Math.Abs(beside) * 4 / 3, found.WorstResidualAmperes, 1e-14);
        Assert.Equal(0, found.WorstNode);
        Assert.True(found.Holdable);
        Assert.Equal(SolveStages.Newton, found.Tried);
    }

    /// <remarks>Of half a microampere next to nothing is missing in amperes, but a part in 25,000 of the
    /// power.</remarks>
    [Fact]
    public void Answer_whose_power_does_not_balance_is_refused()
    {
        NodalSystem circuit = At(new TestNetwork(2, 1, 0, 1, 1e6, [], [new(1, 0, Load.Resistor(1e6))]), 0.5, 1e-5);
        Assert.False(Answer.Check(circuit, SolveStages.Newton, out SolveDiagnostics found));
        Assert.InRange(found.WorstResidualAmperes, 1e-12, 1e-9);
        Assert.Equal(2e-5, found.PowerImbalance, 1e-7);
    }

    /// <remarks>At 6 MA a rounding of the volts is nanoamperes: there 4e-15 of the current is allowed, 24 nA.</remarks>
    [Theory]
    [InlineData(1e-14, true)]
    [InlineData(1.4e-14, false)]
    public void Great_currents_may_miss_by_their_rounding(double beside, bool accepted)
    {
        NodalSystem circuit = At(new TestNetwork(2, 1, 0, 12, 1e-6, [], [new(1, 0, Load.Resistor(1e-6))]), 6, beside);
        Assert.Equal(accepted, Answer.Check(circuit, SolveStages.Newton, out SolveDiagnostics found));
        Assert.InRange(found.WorstResidualAmperes, 1e-8, 1e-7);
    }

    /// <remarks>32 W behind 1 ohm at 12 V balance at 8 V and at 4 V; at 4 V the least change grows.</remarks>
    [Theory]
    [InlineData(8, true)]
    [InlineData(4, false)]
    public void Answer_that_cannot_be_held_is_refused(double volts, bool holdable)
    {
        NodalSystem circuit = At(BehindAnOhm(Load.Led(32, 2)), volts, 0);
        Assert.Equal(holdable, Answer.Check(circuit, SolveStages.Descent, out SolveDiagnostics found));
        Assert.Equal(holdable, found.Holdable);
        Assert.Equal(0, found.WorstResidualAmperes);
        Assert.Equal(0, found.PowerImbalance);
    }

    [Fact]
    public void Circuit_without_unknowns_has_no_worst_point()
    {
        NodalSystem circuit = new TestNetwork(1, 0, 0, 12, 1, [], []).Equations();
        Assert.True(Answer.Find(circuit, warmStart: false, out SolveDiagnostics found));
        Assert.Equal(-1, found.WorstNode);
        Assert.Equal(12, circuit.SourceAmperes);
    }

    [Theory]
    [InlineData(30, false)]
    [InlineData(37, true)]
    public void Descent_is_tried_where_newtons_method_fails(double watts, bool descends)
    {
        NodalSystem circuit = BehindAnOhm(Load.Led(watts, 2)).Equations();
        Assert.True(Answer.Find(circuit, warmStart: false, out SolveDiagnostics found));
        Assert.Equal(descends ? SolveStages.Newton | SolveStages.Descent : SolveStages.Newton, found.Tried);
        Assert.Equal(circuit.Solutions, found.Iterations);
    }

    [Fact]
    public void Warm_start_goes_from_the_volts_of_the_circuit_and_needs_fewer_steps()
    {
        TestNetwork network = BehindAnOhm(Load.Led(35, 2), Load.Filament(12, 0.01));
        NodalSystem cold = network.Equations(),
            warm = network.Equations();
        Assert.True(Answer.Find(cold, warmStart: false, out SolveDiagnostics first));
        cold.Volts.CopyTo(warm.Volts, 0);
        Assert.True(Answer.Find(warm, warmStart: true, out SolveDiagnostics second));
        Assert.True(second.Iterations < first.Iterations, $"{second.Iterations} after {first.Iterations}");
        Assert.Equal(Volts(cold, 1), Volts(warm, 1), 1e-9);
    }

    // The digits beside the volts stand apart, where the solver keeps what the volts cannot hold.
    private static NodalSystem At(TestNetwork network, double volts, double beside)
    {
        NodalSystem circuit = network.Equations();
        Put(circuit, (1, volts));
        circuit.LowVolts[0] = beside;
        circuit.GatherLoadVolts();
        circuit.Loads.Evaluate();
        circuit.UpdateResidual();
        return circuit;
    }
}
