// The fast way: Newton's method on the tangents of the loads, then the last digits on the Kirchhoff residual.
namespace Lighting.Calc;

internal static class NewtonMethod
{
    /// <summary>From full source voltage at every load: above any operating point, so of two the bright one is met
    /// first.</summary>
    public static void StartCold(NodalSystem circuit) =>
        FillVolts(circuit.Loads, circuit.EmfVolts);

    /// <summary>Iterates from the load voltage given until the loads' tangents meet their laws.</summary>
    /// <returns>
    /// False when a matrix was not positive definite, the voltage of a driver came to lie between zero and its minimum,
    /// or the iterations ran out: the point found, if any, need then not be the bright one.
    /// </returns>
    /// <remarks>
    /// A solution with all drivers lit and a positive definite Jacobian is the bright one: the drivers' currents are
    /// convex in the voltage, and such a system has one stable solution at most (the argument known from power flow,
    /// where it singles out the high-voltage solution).
    /// </remarks>
    public static bool TryReach(NodalSystem circuit)
    {
        LoadVector loads = circuit.Loads;
        loads.Evaluate();
        for (int i = 0; i < SolverLimits.NewtonIterations; i++)
        {
            if (!circuit.SolveTangent())
                return false;
            double difference = FollowTangents(circuit);
            for (int j = loads.FirstDriver; j < loads.Count; j++)
            {
                if (loads.IsDark(j))
                    return false;
            }

            if (difference <= SolverLimits.TangentAmperes)
                return true;
        }

        return false;
    }

    /// <summary>Full Newton steps on the residual until it stops falling or is as small as aimed at.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="isEvaluated">Whether the loads are at the circuit's voltage, as <see cref="TryReach"/> leaves
    /// them.</param>
    public static void Polish(NodalSystem circuit, bool isEvaluated = false)
    {
        if (!isEvaluated)
        {
            circuit.GatherLoadVolts();
            circuit.Loads.Evaluate();
        }

        circuit.UpdateResidual();
        for (int i = 0; i < SolverLimits.PolishIterations; i++)
        {
            if (
                circuit.WorstShare <= SolverLimits.TargetShare
                && circuit.PowerImbalance() <= SolverLimits.PowerRelative * SolverLimits.TargetShare
            )
                return;
            if (!circuit.SolveStep())
                return;
            circuit.Move(1);
            circuit.GatherLoadVolts();
            circuit.Loads.Evaluate();
            circuit.UpdateResidual();
        }
    }

    private static void FillVolts(LoadVector loads, double volts)
    {
        loads.Volts.AsSpan(0, loads.Count).Fill(volts);
        loads.LowVolts.AsSpan(0, loads.Count).Clear();
    }

    /// <summary>Moves the loads to the new voltage; a load whose voltage reverses is clamped at zero.</summary>
    /// <returns>Greatest difference of a load's current there from its tangent; infinity while one is clamped at
    /// zero.</returns>
    /// <remarks>
    /// Lamps that are off still form loops through two earths. Started at the source's voltage their tangents lead past
    /// zero to nearly as much the other way, and back; at zero a filament is cold, and its law a straight line.
    /// </remarks>
    private static double FollowTangents(NodalSystem circuit)
    {
        LoadVector loads = circuit.Loads;
        double[] tangent = circuit.TangentAmperes;
        bool turned = false;
        for (int j = 0; j < loads.Count; j++)
        {
            double volts = circuit.Across(loads.Plus[j], loads.Minus[j]);
            tangent[j] = loads.Amperes[j] + loads.Siemens[j] * (volts - loads.Volts[j]);
            bool turns = volts * loads.Volts[j] < 0;
            turned |= turns;
            loads.Volts[j] = turns ? 0 : volts;
        }

        loads.LowVolts.AsSpan(0, loads.Count).Clear();
        loads.Evaluate();
        if (turned)
            return double.PositiveInfinity;
        double greatest = 0;
        for (int j = 0; j < loads.Count; j++)
        {
            double difference = Math.Abs(loads.Amperes[j] - tangent[j]);
            if (!(difference <= greatest))
                greatest = difference;
        }

        return greatest;
    }
}
