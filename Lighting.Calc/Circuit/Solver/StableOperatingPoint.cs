// The order in which the methods are tried, and the check that every answer must pass.
namespace Lighting.Calc;

internal static class StableOperatingPoint
{
    /// <summary>Finds a stable operating point, the bright one where there are several.</summary>
    /// <param name="circuit">Equations, with the voltages of the last solution for a warm start.</param>
    /// <param name="warmStart">Start from that voltage.</param>
    /// <param name="diagnostics">What was found, or how far it fell short; the worst node is a slot.</param>
    public static bool Find(NodalSystem circuit, bool warmStart, out SolveDiagnostics diagnostics)
    {
        circuit.Solutions = 0;
        SolveStages tried = SolveStages.Newton;
        if (warmStart)
            circuit.GatherLoadVolts();
        else
            NewtonMethod.StartCold(circuit);
        if (NewtonMethod.TryReach(circuit))
        {
            NewtonMethod.Polish(circuit, isEvaluated: true);
            if (Check(circuit, tried, out diagnostics))
                return true;
        }

        tried |= SolveStages.Descent;
        DescentMethod.StartUnloaded(circuit);
        DescentMethod.Descend(circuit, leaps: false);
        NewtonMethod.Polish(circuit);
        if (Check(circuit, tried, out diagnostics))
            return true;
        DescentMethod.StartUnloaded(circuit);
        DescentMethod.Descend(circuit, leaps: true);
        NewtonMethod.Polish(circuit);
        return Check(circuit, tried, out diagnostics);
    }

    /// <summary>Kirchhoff, power balance and positive pivots at the present voltage.</summary>
    public static bool Check(NodalSystem circuit, SolveStages tried, out SolveDiagnostics diagnostics)
    {
        int worst = circuit.WorstSlot;
        double residual = worst < 0 ? 0 : Math.Abs(circuit.Residual[worst]);
        double imbalance = circuit.PowerImbalance();
        // Without drivers no slope is negative and the matrix cannot be other than positive definite.
        bool holdable = circuit.Loads.FirstDriver == circuit.Loads.Count || circuit.SolveStep();
        diagnostics = new SolveDiagnostics(tried, circuit.Solutions, worst, residual, imbalance, holdable)
        {
            AllowedAmperes = worst < 0 ? 0 : circuit.AllowedAmperes(worst),
            HasSourceVoltage = circuit.HasSourceVoltage,
        };
        return diagnostics.IsAccepted;
    }
}
