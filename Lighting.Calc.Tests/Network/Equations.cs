// Small equations to try the solver's methods on, and their volts by the nodes of the circuit.

namespace Lighting.Calc.Tests.Network;

internal static class Equations
{
    /// <summary>Loads side by side on 12 V behind 1 ohm in the source; node 1 is the plus.</summary>
    public static TestNetwork BehindAnOhm(params Load[] loads) =>
        new(2, 1, 0, 12, 1, [], [.. loads.Select(l => new TestLoad(1, 0, l))]);

    public static double Volts(NodalSystem circuit, int node) =>
        circuit.Across(circuit.EliminationPlan.Numbering.Slot[node], circuit.Unknowns);

    /// <summary>Sets the volts of nodes; a plus without resistance is at the source's.</summary>
    public static void Put(NodalSystem circuit, params (int Node, double Volts)[] volts)
    {
        circuit.Volts[circuit.Unknowns - 1] = circuit.EmfVolts;
        foreach ((int node, double v) in volts)
            circuit.Volts[circuit.EliminationPlan.Numbering.Slot[node]] = v;
    }
}
