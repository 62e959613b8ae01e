// The guarded way: downhill on the co-content, slowly enough that a driver that can stay lit does.
namespace Lighting.Calc.Network;

/// <summary>Descends from given volts to a point that the circuit can hold.</summary>
/// <remarks>
/// The Kirchhoff residual is the gradient of the co-content, which is bounded below; a point the circuit can hold is a
/// minimum of it. For circuits without drivers it is convex and the descent cannot fail. With drivers, from the
/// no-load volts downward, no step may overshoot: drivers are convex, so their tangent falls short; the other laws are
/// concave, so their chord over the span of the last step is used in place of the tangent.
/// When the matrix is not positive definite no point with all of the present drivers lit is left below. The drivers'
/// slopes then count as positive, which makes it so and still leads downhill, and the steps lengthen until the first
/// driver drops out.
/// </remarks>
internal static class DescentMethod
{
    private const double SmallestSpan = 1e-6;
    private const double LeastSiemens = 1e-9;

    /// <summary>Just under its minimum volts is where a driver that falls is put.</summary>
    private const double Fallen = 0.999;

    /// <summary>Volts with next to no load: those of the points that the wiring alone joins to the source.</summary>
    public static void StartUnloaded(LiveCircuit circuit)
    {
        LoadBank loads = circuit.Loads;
        double emf = Math.Max(Math.Abs(circuit.EmfVolts), 1e-3);
        for (int j = 0; j < loads.Count; j++)
        {
            loads.Volts[j] = 0;
            loads.Amperes[j] = 0;
            loads.Siemens[j] = 1e-4 * loads.At(j, emf).CurrentAmperes / emf + LeastSiemens;
        }

        circuit.SolveTangent();
    }

    /// <returns>False when the iterations ran out.</returns>
    public static bool TryDescend(LiveCircuit circuit)
    {
        LoadBank loads = circuit.Loads;
        double span = 1;
        double reach = 1;
        for (int i = 0; i < SolverLimits.DescentIterations; i++)
        {
            circuit.GatherLoadVolts();
            loads.Evaluate();
            double residual = circuit.UpdateResidual();
            if (residual <= SolverLimits.TargetAmperes)
                return true;
            UseChords(loads, span);
            if (circuit.SolveStep())
            {
                reach = 1;
            }
            else
            {
                StiffenDrivers(loads);
                if (!circuit.SolveStep())
                    return false;
                reach *= 2;
            }

            double fraction = Downhill(circuit, UpToFirstFall(circuit, reach));
            if (fraction == 0)
                return true;
            span = Span(circuit, fraction);
            circuit.Move(fraction);
        }

        return false;
    }

    /// <summary>Slopes of all loads but drivers: the chord down to (1 − span) of the volts where it is steeper.</summary>
    private static void UseChords(LoadBank loads, double span)
    {
        for (int j = 0; j < loads.FirstDriver; j++)
        {
            double slope = loads.Siemens[j];
            double width = span * loads.Volts[j];
            if (span > SmallestSpan && width != 0)
            {
                double chord = (loads.Amperes[j] - loads.At(j, loads.Volts[j] - width).CurrentAmperes) / width;
                slope = Math.Max(slope, chord);
            }

            loads.Siemens[j] = Math.Max(slope, LeastSiemens);
        }
    }

    private static void StiffenDrivers(LoadBank loads)
    {
        for (int j = loads.FirstDriver; j < loads.Count; j++)
            loads.Siemens[j] = Math.Abs(loads.Siemens[j]);
    }

    /// <summary>Shortens a step so that it drops no more drivers than the first to fall under its minimum.</summary>
    private static double UpToFirstFall(LiveCircuit circuit, double reach)
    {
        LoadBank loads = circuit.Loads;
        double fraction = reach;
        for (int j = loads.FirstDriver; j < loads.Count; j++)
        {
            double change = StepOf(circuit, j);
            double target = Fallen * loads.MinimumVolts(j);
            if (loads.IsLit(j) && loads.Volts[j] + fraction * change < target)
                fraction = (target - loads.Volts[j]) / change;
        }

        return fraction;
    }

    /// <summary>Halves the fraction until the co-content falls; 0 when it cannot fall any more.</summary>
    private static double Downhill(LiveCircuit circuit, double fraction)
    {
        double start = circuit.CoContentWatts(0);
        double noise = 1e-15 * Math.Abs(start);
        for (int halvings = 0; halvings < 60; halvings++)
        {
            if (circuit.CoContentWatts(fraction) <= start + noise)
                return fraction;
            fraction /= 2;
        }

        return 0;
    }

    private static double Span(LiveCircuit circuit, double fraction)
    {
        LoadBank loads = circuit.Loads;
        double span = 0;
        for (int j = 0; j < loads.Count; j++)
        {
            if (loads.Volts[j] != 0)
                span = Math.Max(span, Math.Abs(fraction * StepOf(circuit, j) / loads.Volts[j]));
        }

        return Math.Min(span, 1);
    }

    private static double StepOf(LiveCircuit circuit, int load)
    {
        double[] step = circuit.Factor.Right;
        step[circuit.Unknowns] = 0;
        return step[circuit.Loads.Plus[load]] - step[circuit.Loads.Minus[load]];
    }
}
