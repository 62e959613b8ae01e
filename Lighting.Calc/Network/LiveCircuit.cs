// The equations of one plan with their numbers: assembly, Kirchhoff residual, co-content.
namespace Lighting.Calc.Network;

/// <summary>Nodal equations G·v + loads(v) = source of the live part, and the volts they are at.</summary>
internal sealed class LiveCircuit
{
    private readonly Plan plan;
    private readonly int[] conductorA;
    private readonly int[] conductorB;
    private readonly double[] siemens;
    private readonly double[] fixedDiagonal;
    private readonly double[] fixedEntries;
    private double emfVolts;
    private double sourceOhms;

    public LiveCircuit(Plan plan, Circuit circuit)
    {
        this.plan = plan;
        Unknowns = plan.Unknowns;
        Factor = new Factor(plan.Pattern);
        Loads = new LoadBank(plan, circuit.LoadCount);
        conductorA = [.. plan.LiveConductors.Select(i => plan.Slot[circuit.ConductorA[i]])];
        conductorB = [.. plan.LiveConductors.Select(i => plan.Slot[circuit.ConductorB[i]])];
        siemens = new double[conductorA.Length];
        fixedDiagonal = new double[Factor.Diagonal.Length];
        fixedEntries = new double[Factor.Entries.Length];
        Volts = new double[Unknowns + 1];
        LowVolts = new double[Unknowns + 1];
        Residual = new double[Unknowns + 1];
        TangentAmperes = new double[Loads.Count];
    }

    public int Unknowns { get; }

    public Factor Factor { get; }

    public LoadBank Loads { get; }

    /// <summary>Volts by slot, ground last. The true volts are these plus <see cref="LowVolts"/>.</summary>
    /// <remarks>
    /// A micro-ohm joint at 13 V passes amperes at less than the rounding of 13 V: its current needs the difference of
    /// two volts beyond the 16 digits of each.
    /// </remarks>
    public double[] Volts { get; }

    public double[] LowVolts { get; }

    /// <summary>Amperes that leave each slot in excess of those that arrive.</summary>
    public double[] Residual { get; }

    /// <summary>Room for Newton's method: the loads' currents as their tangents foretell them.</summary>
    public double[] TangentAmperes { get; }

    public double EmfVolts => emfVolts;

    public double SourceAmperes { get; private set; }

    /// <summary>Linear systems solved since the count was last reset.</summary>
    public int Solutions { get; set; }

    private bool IsIdeal => sourceOhms == 0;

    public void TakeSource(double emf, double resistanceOhms)
    {
        // A battery taken out (infinite resistance) leaves a dead circuit; one ohm keeps its equations regular.
        bool absent = double.IsPositiveInfinity(resistanceOhms);
        emfVolts = absent ? 0 : emf;
        sourceOhms = absent ? 1 : resistanceOhms;
    }

    /// <summary>Takes over the conductors' conductances, indexed as in the circuit.</summary>
    public void TakeConductors(double[] conductanceSiemens)
    {
        Array.Clear(fixedDiagonal);
        Array.Clear(fixedEntries);
        int[] live = plan.LiveConductors;
        for (int c = 0; c < siemens.Length; c++)
        {
            int i = live[c];
            double g = conductanceSiemens[i];
            siemens[c] = g;
            fixedDiagonal[conductorA[c]] += g;
            fixedDiagonal[conductorB[c]] += g;
            fixedEntries[plan.ConductorEntry[i]] -= g;
        }
    }

    /// <summary>Solves with each load replaced by its slope and its current at zero volts of that line (the tangent).</summary>
    /// <returns>False when the matrix is not positive definite; the volts are then as before.</returns>
    public bool SolveTangent()
    {
        double[] right = Factor.Right;
        Array.Clear(right);
        LoadBank loads = Loads;
        for (int j = 0; j < loads.Count; j++)
        {
            double offset = loads.Siemens[j] * loads.Volts[j] - loads.Amperes[j];
            right[loads.Plus[j]] += offset;
            right[loads.Minus[j]] -= offset;
        }

        if (Unknowns > 0 && !IsIdeal)
            right[Unknowns - 1] += emfVolts / sourceOhms;
        if (!SolveAssembled(emfVolts))
            return false;
        Array.Copy(right, Volts, Unknowns);
        Array.Clear(LowVolts);
        return true;
    }

    /// <summary>Solves slopes·δ = −residual; δ is left in the factor's right-hand side.</summary>
    /// <returns>False when the matrix is not positive definite.</returns>
    public bool SolveStep()
    {
        for (int i = 0; i < Unknowns; i++)
            Factor.Right[i] = -Residual[i];
        return SolveAssembled(fixedLast: 0);
    }

    /// <summary>Turns the solved step round.</summary>
    public void TurnStep()
    {
        for (int i = 0; i < Unknowns; i++)
            Factor.Right[i] = -Factor.Right[i];
    }

    /// <summary>Adds a multiple of the solved step to the volts, keeping the digits that the volts cannot hold.</summary>
    public void Move(double fraction)
    {
        double[] step = Factor.Right;
        for (int i = 0; i < Unknowns; i++)
        {
            double low = LowVolts[i] + fraction * step[i];
            double sum = Volts[i] + low;
            LowVolts[i] = low - (sum - Volts[i]);
            Volts[i] = sum;
        }
    }

    public void GatherLoadVolts()
    {
        for (int j = 0; j < Loads.Count; j++)
            Loads.Volts[j] = Across(Loads.Plus[j], Loads.Minus[j]);
    }

    public double Across(int slotA, int slotB) => (Volts[slotA] - Volts[slotB]) + (LowVolts[slotA] - LowVolts[slotB]);

    /// <summary>Kirchhoff residual with the loads' present amperes.</summary>
    /// <returns>The greatest at any slot.</returns>
    public double UpdateResidual()
    {
        double[] sum = Residual;
        Array.Clear(sum);
        for (int c = 0; c < siemens.Length; c++)
        {
            double amperes = siemens[c] * Across(conductorA[c], conductorB[c]);
            sum[conductorA[c]] += amperes;
            sum[conductorB[c]] -= amperes;
        }

        for (int j = 0; j < Loads.Count; j++)
        {
            sum[Loads.Plus[j]] += Loads.Amperes[j];
            sum[Loads.Minus[j]] -= Loads.Amperes[j];
        }

        if (Unknowns == 0)
        {
            SourceAmperes = emfVolts == 0 ? 0 : emfVolts / sourceOhms;
            return 0;
        }

        int plus = Unknowns - 1;
        SourceAmperes = IsIdeal ? sum[plus] : (emfVolts - Volts[plus] - LowVolts[plus]) / sourceOhms;
        sum[plus] -= SourceAmperes;
        return Math.Abs(sum[WorstSlot()]);
    }

    public int WorstSlot()
    {
        int worst = 0;
        for (int i = 1; i < Unknowns; i++)
        {
            if (!(Math.Abs(Residual[i]) <= Math.Abs(Residual[worst])))
                worst = i;
        }

        return worst;
    }

    /// <summary>|power in − power out| over power in.</summary>
    /// <remarks>By Tellegen's theorem the difference is exactly the sum of volts times residual over the nodes.</remarks>
    public double PowerImbalance()
    {
        double lost = 0;
        for (int i = 0; i < Unknowns; i++)
            lost += Volts[i] * Residual[i];
        return Math.Abs(lost) / Math.Max(Math.Abs(emfVolts * SourceAmperes), SolverLimits.NoPowerWatts);
    }

    /// <summary>Greatest current in a conductor or the source.</summary>
    public double GreatestAmperes()
    {
        double greatest = Math.Abs(SourceAmperes);
        for (int c = 0; c < siemens.Length; c++)
            greatest = Math.Max(greatest, Math.Abs(siemens[c] * Across(conductorA[c], conductorB[c])));
        return greatest;
    }

    /// <summary>Co-content of the whole circuit at the present volts plus a multiple of the solved step, in watts.</summary>
    public double CoContentWatts(double fraction)
    {
        double[] step = Factor.Right;
        step[Unknowns] = 0;
        double sum = 0;
        for (int c = 0; c < siemens.Length; c++)
        {
            double volts = Stepped(conductorA[c], conductorB[c]);
            sum += siemens[c] * volts * volts / 2;
        }

        for (int j = 0; j < Loads.Count; j++)
            sum += Loads.CoContentWatts(j, Stepped(Loads.Plus[j], Loads.Minus[j]));
        if (IsIdeal)
            return sum;
        double drop = emfVolts - Stepped(Unknowns - 1, Unknowns);
        return sum + drop * drop / (2 * sourceOhms);

        double Stepped(int a, int b) => Across(a, b) + fraction * (step[a] - step[b]);
    }

    private bool SolveAssembled(double fixedLast)
    {
        Solutions++;
        Array.Copy(fixedDiagonal, Factor.Diagonal, fixedDiagonal.Length);
        Array.Copy(fixedEntries, Factor.Entries, fixedEntries.Length);
        for (int j = 0; j < Loads.Count; j++)
        {
            double slope = Loads.Siemens[j];
            Factor.Diagonal[Loads.Plus[j]] += slope;
            Factor.Diagonal[Loads.Minus[j]] += slope;
            Factor.Entries[Loads.Entry[j]] -= slope;
        }

        if (Unknowns > 0 && !IsIdeal)
            Factor.Diagonal[Unknowns - 1] += 1 / sourceOhms;
        return Factor.Solve(IsIdeal ? fixedLast : double.NaN);
    }
}
