// The equations of a plan with their numbers: assembly, Kirchhoff residual, co-content.
using System.Diagnostics.CodeAnalysis;

namespace Lighting.Calc;

/// <summary>Nodal equations G·v + loads(v) = source of the live part, and the node voltages.</summary>
/// <remarks>Its arrays have room for the whole circuit, so that turning from one plan to another allocates
/// nothing.</remarks>
internal sealed class NodalSystem
{
    private readonly Circuit circuit;
    private readonly int[] conductorA;
    private readonly int[] conductorB;
    private readonly double[] siemens;
    private readonly double[] fixedDiagonal;
    private double[] fixedEntries = [];
    private EliminationPlan plan;
    private EliminationNumbering numbering;
    private int conductors;
    private double emfVolts;
    private double sourceOhms;

    public NodalSystem(Circuit circuit, EliminationPlan plan)
    {
        this.circuit = circuit;
        Factor = new Factor(circuit.NodeCount);
        Loads = new LoadVector(circuit);
        conductorA = new int[circuit.ConductorCount];
        conductorB = new int[circuit.ConductorCount];
        siemens = new double[circuit.ConductorCount];
        int places = circuit.NodeCount + 1;
        fixedDiagonal = new double[places];
        Volts = new double[places];
        LowVolts = new double[places];
        Residual = new double[places];
        TangentAmperes = new double[circuit.LoadCount];
        Take(plan);
    }

    public EliminationPlan EliminationPlan => plan;

    public int Unknowns { get; private set; }

    public Factor Factor { get; }

    public LoadVector Loads { get; }

    /// <summary>Voltage by slot, the reference node last. The true voltage is this plus
    /// <see cref="LowVolts"/>.</summary>
    /// <remarks>
    /// A micro-ohm joint at 13 V passes amperes at less than the rounding of 13 V: its current needs the difference of
    /// two voltages beyond the 16 digits of each.
    /// </remarks>
    public double[] Volts { get; }

    public double[] LowVolts { get; }

    /// <summary>Current that leaves each slot in excess of the current that arrives.</summary>
    public double[] Residual { get; }

    /// <summary>Room for Newton's method: the loads' currents as their tangents predict them.</summary>
    public double[] TangentAmperes { get; }

    public double EmfVolts => emfVolts;

    public double SourceAmperes { get; private set; }

    /// <summary>Linear systems solved since the count was last reset.</summary>
    public int Solutions { get; set; }

    private bool IsIdeal => sourceOhms == 0;

    /// <summary>Turns to a plan; its conductors and loads are then to be taken over.</summary>
    [MemberNotNull(nameof(plan), nameof(numbering))]
    public void Take(EliminationPlan next)
    {
        plan = next;
        Unknowns = next.Unknowns;
        numbering = next.Numbering;
        Factor.Take(numbering.Pattern);
        if (fixedEntries.Length < Factor.Entries.Length)
            fixedEntries = new double[Factor.Entries.Length];
        int[] live = next.LiveConductors;
        conductors = live.Length;
        for (int c = 0; c < live.Length; c++)
        {
            conductorA[c] = numbering.Slot[circuit.ConductorA[live[c]]];
            conductorB[c] = numbering.Slot[circuit.ConductorB[live[c]]];
        }

        Array.Clear(Volts);
        Array.Clear(LowVolts);
    }

    public void TakeSource(double emf, double resistanceOhms)
    {
        // A disconnected battery (infinite resistance) leaves a dead circuit; one ohm keeps its equations regular.
        bool absent = double.IsPositiveInfinity(resistanceOhms);
        emfVolts = absent ? 0 : emf;
        sourceOhms = absent ? 1 : resistanceOhms;
    }

    /// <summary>Takes over the conductors' conductances, indexed as in the circuit.</summary>
    public void TakeConductors(double[] conductanceSiemens)
    {
        Array.Clear(fixedDiagonal, 0, Unknowns + 1);
        Array.Clear(fixedEntries, 0, numbering.Pattern.EntryCount + 1);
        int[] live = plan.LiveConductors;
        for (int c = 0; c < live.Length; c++)
        {
            int i = live[c];
            double g = conductanceSiemens[i];
            siemens[c] = g;
            fixedDiagonal[conductorA[c]] += g;
            fixedDiagonal[conductorB[c]] += g;
            fixedEntries[numbering.ConductorEntry[c]] -= g;
        }
    }

    /// <summary>Solves with each load replaced by its slope and its current at zero voltage on that line (the
    /// tangent).</summary>
    /// <returns>False when the matrix is not positive definite; the voltage is then as before.</returns>
    public bool SolveTangent()
    {
        double[] right = Factor.Right;
        Array.Clear(right, 0, Unknowns + 1);
        LoadVector loads = Loads;
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
        Array.Clear(LowVolts, 0, Unknowns);
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

    /// <summary>Adds a multiple of the solved step to the voltage, keeping the digits that the voltage cannot
    /// hold.</summary>
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

    /// <summary>Kirchhoff residual with the loads' present current.</summary>
    /// <returns>The greatest at any slot.</returns>
    public double UpdateResidual()
    {
        double[] sum = Residual;
        Array.Clear(sum, 0, Unknowns + 1);
        for (int c = 0; c < conductors; c++)
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

    /// <summary>Writes the current of each live conductor to its place in the circuit.</summary>
    public void CopyConductorAmperes(Span<double> amperes)
    {
        for (int c = 0; c < conductors; c++)
            amperes[plan.LiveConductors[c]] = siemens[c] * Across(conductorA[c], conductorB[c]);
    }

    /// <summary>|power in − power out| over power in.</summary>
    /// <remarks>By Tellegen's theorem the difference is exactly the sum of voltage times residual over the
    /// nodes.</remarks>
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
        for (int c = 0; c < conductors; c++)
            greatest = Math.Max(greatest, Math.Abs(siemens[c] * Across(conductorA[c], conductorB[c])));
        return greatest;
    }

    /// <summary>Co-content of the whole circuit at the present voltage plus a multiple of the solved step, in
    /// watts.</summary>
    public double CoContentWatts(double fraction)
    {
        double[] step = Factor.Right;
        step[Unknowns] = 0;
        double sum = 0;
        for (int c = 0; c < conductors; c++)
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
        Array.Copy(fixedDiagonal, Factor.Diagonal, Unknowns + 1);
        Array.Copy(fixedEntries, Factor.Entries, numbering.Pattern.EntryCount + 1);
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
