// Looks for other stable operating points: with drivers dark that are lit at the point found.
namespace Lighting.Calc;

/// <summary>Searches from below, where <see cref="OperatingPoint"/> searches from above.</summary>
/// <remarks>
/// First a bound: no load draws more than at the source's voltage, a driver never more than at its minimum, and what
/// each subtracts from another's voltage is linear. Where every lit driver keeps its minimum even so, there is nothing
/// to look for. With some drivers held dark as resistors the circuit is left to settle; then they are let go. Those
/// whose voltage suffice light up at once, and whatever stays dark is held so by the circuit itself. First all drivers
/// are held together, then each alone that is not yet known to drop out.
/// </remarks>
internal sealed class UndervoltageDropout(NodalSystem circuit)
{
    private readonly double[] volts = new double[circuit.Volts.Length];
    private readonly double[] lowVolts = new double[circuit.Volts.Length];
    private readonly double[] most = new double[circuit.Loads.Laws.Length];
    private readonly bool[] lit = new bool[circuit.Loads.Laws.Length];
    private readonly bool[] mayDropOut = new bool[circuit.Loads.Laws.Length];

    /// <summary>Fills <see cref="MayDropOut"/> and leaves the circuit at the point it was at.</summary>
    public void Run()
    {
        LoadVector loads = circuit.Loads;
        circuit.Volts.CopyTo(volts, 0);
        circuit.LowVolts.CopyTo(lowVolts, 0);
        Array.Clear(mayDropOut);
        bool any = false;
        for (int j = loads.FirstDriver; j < loads.Count; j++)
            any |= lit[j] = loads.IsLit(j);
        if (!any)
            return;
        if (!KeepTheirMinimum())
            Search();
        Restore();
        circuit.GatherLoadVolts();
        loads.Evaluate();
        circuit.UpdateResidual();
    }

    public bool MayDropOut(int place) => mayDropOut[place];

    private bool KeepTheirMinimum()
    {
        LoadVector loads = circuit.Loads;
        for (int j = 0; j < loads.Count; j++)
            most[j] = Math.Abs(
                loads.At(j, j < loads.FirstDriver ? circuit.EmfVolts : loads.MinimumVolts(j)).CurrentAmperes
            );
        DescentMethod.StartUnloaded(circuit);
        for (int j = loads.FirstDriver; j < loads.Count; j++)
        {
            if (!lit[j])
                continue;
            double least = circuit.Across(loads.Plus[j], loads.Minus[j]);
            Array.Clear(circuit.Residual);
            circuit.Residual[loads.Plus[j]] = -1;
            circuit.Residual[loads.Minus[j]] = 1;
            if (!circuit.SolveStep())
                return false;
            double[] ohms = circuit.Factor.Right;
            ohms[circuit.Unknowns] = 0;
            for (int k = 0; k < loads.Count; k++)
                least -= most[k] * Math.Abs(ohms[loads.Plus[k]] - ohms[loads.Minus[k]]);
            if (!(least > loads.MinimumVolts(j)))
                return false;
        }

        return true;
    }

    private void Search()
    {
        LoadVector loads = circuit.Loads;
        for (int j = loads.FirstDriver; j < loads.Count; j++)
            loads.Locked[j] = true;
        DescentMethod.StartUnloaded(circuit);
        SettleThenRelease();
        for (int j = loads.FirstDriver; j < loads.Count; j++)
        {
            if (!lit[j] || mayDropOut[j])
                continue;
            Restore();
            loads.Locked[j] = true;
            SettleThenRelease();
        }
    }

    private void SettleThenRelease()
    {
        LoadVector loads = circuit.Loads;
        DescentMethod.Descend(circuit, leaps: false);
        Array.Clear(loads.Locked);
        DescentMethod.Descend(circuit, leaps: false);
        NewtonMethod.Polish(circuit);
        if (!StableOperatingPoint.Check(circuit, SolveStages.Descent, out _))
            return;
        for (int j = loads.FirstDriver; j < loads.Count; j++)
            mayDropOut[j] |= lit[j] && loads.IsDark(j);
    }

    private void Restore()
    {
        volts.CopyTo(circuit.Volts, 0);
        lowVolts.CopyTo(circuit.LowVolts, 0);
    }
}
