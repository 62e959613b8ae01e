// The guarded way: downhill on the co-content, slowly enough that a driver that can stay lit does.
namespace Lighting.Calc;

/// <summary>Descends from given voltages to a stable operating point.</summary>
/// <remarks>
/// The Kirchhoff residual is the gradient of the co-content, which is bounded below; a stable operating point is a
/// minimum of it. For circuits without drivers it is convex and the descent cannot fail. With drivers, from the
/// no-load voltage downward, no step may overshoot: drivers are convex, so their tangent falls short; the other laws
/// are concave, so their chord over the span of the last step is used in place of the tangent.
/// When the matrix is not positive definite no point with all of the present drivers lit is left below. The drivers'
/// slopes then count as positive, which makes it so and still leads downhill, and the steps lengthen until the first
/// driver drops out. With leaps: close to where a point with all of them lit has only just ceased to be, the residual
/// is almost nothing and such steps make no progress: then the slopes count for as little less as makes the matrix
/// positive definite, which points where the circuit is least stiff, and the step is lengthened until a driver falls.
/// </remarks>
internal static class DescentMethod
{
    private const double SmallestSpan = 1e-6;
    private const double LeastSiemens = 1e-9;

    /// <summary>Shares of a lit driver's negative slope that are left away, in the order in which they are tried; at 2
    /// it counts as positive.</summary>
    private static readonly double[] s_softening = [1e-3, 1e-2, 0.1, 0.5, 1, 2];

    /// <summary>Voltage of a driver after it drops out: just below its minimum.</summary>
    private const double Fallen = 0.999;

    /// <summary>Voltage almost without load: that of the points that the wiring alone joins to the source.</summary>
    public static void StartUnloaded(NodalSystem circuit)
    {
        LoadVector loads = circuit.Loads;
        double emf = Math.Max(Math.Abs(circuit.EmfVolts), 1e-3);
        for (int j = 0; j < loads.Count; j++)
        {
            loads.Volts[j] = 0;
            loads.Amperes[j] = 0;
            loads.Siemens[j] = 1e-4 * Math.Abs(loads.At(j, emf).CurrentAmperes) / emf + LeastSiemens;
        }

        circuit.SolveTangent();
    }

    /// <summary>Steps until no step leads on or the iterations run out; the caller checks whether the point is
    /// stable.</summary>
    /// <param name="circuit">Equations, at the voltage to start from.</param>
    /// <param name="leaps">Whether to leap past a place where the residual is almost zero and no point is
    /// stable.</param>
    public static void Descend(NodalSystem circuit, bool leaps)
    {
        double span = 1;
        double reach = 1;
        for (int i = 0; i < SolverLimits.DescentIterations && Step(circuit, leaps, ref span, ref reach); i++) { }
    }

    /// <param name="circuit">Equations, at the voltage to step from.</param>
    /// <param name="leaps">As in <see cref="Descend"/>.</param>
    /// <param name="span">Greatest relative change of a load's voltage in the last step; 1 before the first.</param>
    /// <param name="reach">How many times its own length a step may go that leads past the last point with all the
    /// present drivers lit.</param>
    /// <returns>False when there is nowhere to go, and nothing was moved.</returns>
    public static bool Step(NodalSystem circuit, bool leaps, ref double span, ref double reach)
    {
        LoadVector loads = circuit.Loads;
        circuit.GatherLoadVolts();
        loads.Evaluate();
        circuit.UpdateResidual();
        if (circuit.WorstShare <= SolverLimits.TargetShare && (!leaps || circuit.SolveStep()))
            return false;
        UseChords(loads, span);
        double fraction;
        if (circuit.SolveStep())
        {
            reach = 1;
            fraction = Downhill(circuit, Math.Min(1, UpToFirstFall(circuit)));
        }
        else if (!leaps)
        {
            reach *= 2;
            SolveSoftened(circuit, s_softening.AsSpan(^1..));
            fraction = Downhill(circuit, Math.Min(reach, UpToFirstFall(circuit)));
        }
        else
        {
            SolveSoftened(circuit, s_softening);
            fraction = Leap(circuit);
        }

        if (fraction == 0)
            return false;
        span = Span(circuit, fraction);
        circuit.Move(fraction);
        return true;
    }

    /// <summary>Slopes of all loads but drivers: the chord down to (1 − span) of the voltage where it is
    /// steeper.</summary>
    private static void UseChords(LoadVector loads, double span)
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

    /// <summary>The step with the lit drivers' slopes counted for less, by the first share that makes the matrix
    /// positive definite; the last, 2, does.</summary>
    private static void SolveSoftened(NodalSystem circuit, ReadOnlySpan<double> shares)
    {
        LoadVector loads = circuit.Loads;
        foreach (double less in shares)
        {
            for (int j = loads.FirstDriver; j < loads.Count; j++)
            {
                if (loads.IsLit(j))
                    loads.Siemens[j] = (less - 1) * loads.Amperes[j] / loads.Volts[j];
            }

            if (circuit.SolveStep())
                return;
        }
    }

    /// <summary>The fraction of a step at which the first driver falls under its minimum; beyond any number when none
    /// does.</summary>
    private static double UpToFirstFall(NodalSystem circuit)
    {
        LoadVector loads = circuit.Loads;
        double fraction = double.PositiveInfinity;
        for (int j = loads.FirstDriver; j < loads.Count; j++)
        {
            double change = StepOf(circuit, j);
            if (loads.IsLit(j) && change < 0)
                fraction = Math.Min(fraction, (Fallen * loads.MinimumVolts(j) - loads.Volts[j]) / change);
        }

        return fraction;
    }

    /// <summary>Where no point with all the present drivers lit is left: down until the first of them falls, or as far
    /// as it goes downhill.</summary>
    private static double Leap(NodalSystem circuit)
    {
        LoadVector loads = circuit.Loads;
        double greatest = 0;
        for (int j = loads.FirstDriver; j < loads.Count; j++)
        {
            double change = StepOf(circuit, j);
            if (loads.IsLit(j) && Math.Abs(change) > Math.Abs(greatest))
                greatest = change;
        }

        // With almost no residual the step's sign is that of rounding; the way on is down.
        if (greatest > 0)
            circuit.TurnStep();
        for (double fraction = UpToFirstFall(circuit); double.IsFinite(fraction) && fraction > 1; fraction /= 2)
        {
            (double watts, double rounding) = circuit.CoContentChange(fraction);
            if (watts < -10 * rounding)
                return fraction;
        }

        return Downhill(circuit, Math.Min(1, UpToFirstFall(circuit)));
    }

    /// <summary>Halves the fraction until the co-content falls; 0 when it cannot fall any more.</summary>
    private static double Downhill(NodalSystem circuit, double fraction)
    {
        for (int halvings = 0; halvings < 60; halvings++)
        {
            (double watts, double rounding) = circuit.CoContentChange(fraction);
            if (watts <= rounding)
                return fraction;
            fraction /= 2;
        }

        return 0;
    }

    private static double Span(NodalSystem circuit, double fraction)
    {
        LoadVector loads = circuit.Loads;
        double span = 0;
        for (int j = 0; j < loads.Count; j++)
        {
            if (loads.Volts[j] != 0)
                span = Math.Max(span, Math.Abs(fraction * StepOf(circuit, j) / loads.Volts[j]));
        }

        return Math.Min(span, 1);
    }

    private static double StepOf(NodalSystem circuit, int load)
    {
        double[] step = circuit.Factor.Right;
        step[circuit.Unknowns] = 0;
        return step[circuit.Loads.Plus[load]] - step[circuit.Loads.Minus[load]];
    }
}
