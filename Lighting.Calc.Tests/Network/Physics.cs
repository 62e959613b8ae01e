// Ohm, Kirchhoff, load laws and power balance, worked out anew from what the solver reports.

namespace Lighting.Calc.Tests.Network;

internal static class Physics
{
    /// <summary>The solver after a solution, with the status and every law of the circuit asserted.</summary>
    public static CircuitSolver Solved(this TestNetwork network)
    {
        CircuitSolver solver = network.Solver();
        SolveStatus status = solver.Solve();
        Assert.True(status == SolveStatus.Solved, $"{status}: {solver.Diagnostics}");
        AssertHolds(network, solver);
        return solver;
    }

    public static void AssertHolds(TestNetwork network, CircuitSolver solver)
    {
        var sum = new double[network.Nodes];
        double powerOut = 0;
        for (int i = 0; i < network.Conductors.Count; i++)
        {
            (int a, int b, double ohms) = network.Conductors[i];
            double amperes = solver.ConductorAmperes(i);
            sum[a] += amperes;
            sum[b] -= amperes;
            if (double.IsPositiveInfinity(ohms))
            {
                Assert.Equal(0, amperes);
                continue;
            }

            Assert.Equal(amperes * ohms, solver.NodeVolts(a) - solver.NodeVolts(b), 1e-11);
            powerOut += amperes * amperes * ohms;
        }

        for (int i = 0; i < network.Loads.Count; i++)
        {
            (int feed, int ret, Load law) = network.Loads[i];
            double volts = solver.NodeVolts(feed) - solver.NodeVolts(ret);
            double amperes = solver.LoadAmperes(i);
            Assert.Equal(volts, solver.LoadVolts(i), 1e-11);
            sum[feed] += amperes;
            sum[ret] -= amperes;
            powerOut += volts * amperes;
            LawPoint expected = law.Quantity == 0 ? default : law.At(law.Reversed ? -volts : volts);
            Assert.Equal(law.Reversed ? -expected.CurrentAmperes : expected.CurrentAmperes, amperes, 1e-9);
        }

        sum[network.Plus] -= solver.SourceAmperes;
        sum[network.Minus] += solver.SourceAmperes;
        powerOut += solver.SourceAmperes * solver.SourceAmperes * network.SourceOhms;
        for (int v = 0; v < network.Nodes; v++)
            Assert.True(Math.Abs(sum[v]) <= 1e-9, $"Kirchhoff at node {v}: {sum[v]} A; {solver.Diagnostics}");
        double powerIn = network.Emf * solver.SourceAmperes;
        Assert.True(
            Math.Abs(powerIn - powerOut) <= 1e-9 * Math.Abs(powerIn) + 1e-12,
            $"{powerIn} W in, {powerOut} W out"
        );
    }
}
