// Sets and reads the volts of a solver's equations by the nodes of the circuit.
using Lighting.Calc.Network;

namespace Lighting.Calc.Tests.Network;

internal static class Equations
{
    public static double Volts(LiveCircuit circuit, int node) => circuit.Across(circuit.Plan.Numbering.Slot[node], circuit.Unknowns);

    /// <summary>Sets the volts of nodes; a plus without resistance is at the source's.</summary>
    public static void Put(LiveCircuit circuit, params (int Node, double Volts)[] volts)
    {
        circuit.Volts[circuit.Unknowns - 1] = circuit.EmfVolts;
        foreach ((int node, double v) in volts)
            circuit.Volts[circuit.Plan.Numbering.Slot[node]] = v;
    }
}
