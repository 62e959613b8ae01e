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
    private double[] fixedEntries = [];
    private EliminationPlan plan;
    private EliminationNumbering numbering;
    private int conductors;
    private double greatestSiemens;
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
        Volts = new double[places];
        LowVolts = new double[places];
        Residual = new double[places];
        Meeting = new double[places];
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

    /// <summary>The currents that meet in each slot, their magnitudes added.</summary>
    public double[] Meeting { get; }

    /// <summary>Room for Newton's method: the loads' currents as their tangents predict them.</summary>
    public double[] TangentAmperes { get; }

    public double EmfVolts => emfVolts;

    public double SourceAmperes { get; private set; }

    /// <summary>Greatest current in a conductor or the source.</summary>
    public double GreatestAmperes { get; private set; }

    /// <summary>The slot whose residual is the greatest share of what it may be, at the last update; −1 without
    /// unknowns.</summary>
    public int WorstSlot { get; private set; } = -1;

    /// <summary>That share: up to 1 the currents balance.</summary>
    public double WorstShare { get; private set; }

    /// <summary>Whether the plus has the voltage of an ideal source; it has not before anything is
    /// solved.</summary>
    public bool HasSourceVoltage => !IsIdeal || Unknowns == 0 || Volts[Unknowns - 1] == emfVolts;

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
        Array.Clear(fixedEntries, 0, numbering.Pattern.PlaceCount);
        int[] live = plan.LiveConductors;
        greatestSiemens = 0;
        for (int c = 0; c < live.Length; c++)
        {
            int i = live[c];
            double g = conductanceSiemens[i];
            siemens[c] = g;
            greatestSiemens = Math.Max(greatestSiemens, g);
            fixedEntries[numbering.ConductorEntry[c]] += g;
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
        return SolveRight();
    }

    /// <summary>As <see cref="SolveStep"/>, with the right-hand side that the factor holds.</summary>
    public bool SolveRight() => SolveAssembled(fixedLast: 0);

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
        LoadVector loads = Loads;
        for (int j = 0; j < loads.Count; j++)
            loads.Volts[j] = Across(loads.Plus[j], loads.Minus[j]);
        for (int j = loads.FirstKnee; j < loads.FirstBehindKnees; j++)
        {
            // Sums of two numbers with what their rounding leaves over: D. E. Knuth, "The art of computer programming",
            // volume 2, 4.2.2.
            double plus = Volts[loads.Plus[j]],
                minus = Volts[loads.Minus[j]],
                high = plus - minus,
                shift = high - plus,
                low = LowVolts[loads.Plus[j]] - LowVolts[loads.Minus[j]];
            loads.LowVolts[j] = plus - (high - shift) - (minus + shift) + (low - (loads.Volts[j] - high));
        }
    }

    public double Across(int slotA, int slotB) => (Volts[slotA] - Volts[slotB]) + (LowVolts[slotA] - LowVolts[slotB]);

    /// <summary>Kirchhoff residual with the loads' present current.</summary>
    /// <returns>The greatest at any slot.</returns>
    public double UpdateResidual()
    {
        double[] sum = Residual,
            meeting = Meeting;
        Array.Clear(sum, 0, Unknowns + 1);
        Array.Clear(meeting, 0, Unknowns + 1);
        double greatest = 0;
        for (int c = 0; c < conductors; c++)
        {
            double amperes = siemens[c] * Across(conductorA[c], conductorB[c]),
                size = Math.Abs(amperes);
            sum[conductorA[c]] += amperes;
            sum[conductorB[c]] -= amperes;
            meeting[conductorA[c]] += size;
            meeting[conductorB[c]] += size;
            greatest = Math.Max(greatest, size);
        }

        for (int j = 0; j < Loads.Count; j++)
        {
            double amperes = Loads.Amperes[j],
                size = Math.Abs(amperes);
            sum[Loads.Plus[j]] += amperes;
            sum[Loads.Minus[j]] -= amperes;
            meeting[Loads.Plus[j]] += size;
            meeting[Loads.Minus[j]] += size;
        }

        if (Unknowns == 0)
        {
            SourceAmperes = emfVolts == 0 ? 0 : emfVolts / sourceOhms;
            (WorstSlot, WorstShare) = (-1, 0);
            return 0;
        }

        int plus = Unknowns - 1;
        SourceAmperes = IsIdeal ? sum[plus] : (emfVolts - Volts[plus] - LowVolts[plus]) / sourceOhms;
        sum[plus] -= SourceAmperes;
        meeting[plus] += Math.Abs(SourceAmperes);
        GreatestAmperes = Math.Max(greatest, Math.Abs(SourceAmperes));
        double residual = 0;
        (WorstSlot, WorstShare) = (0, 0);
        for (int i = 0; i < Unknowns; i++)
        {
            double amperes = Math.Abs(sum[i]);
            if (!(amperes <= residual))
                residual = amperes;
            if (amperes == 0)
                continue;
            double share = amperes / AllowedAmperes(i);
            if (!(share <= WorstShare))
                (WorstSlot, WorstShare) = (i, share);
            if (double.IsNaN(share))
                break;
        }

        return residual;
    }

    /// <summary>The residual that a slot of an accepted solution may have.</summary>
    public double AllowedAmperes(int slot) =>
        Math.Max(
            Math.Min(SolverLimits.ResidualAmperes, SolverLimits.ResidualOfMeeting * Meeting[slot]),
            Math.Max(
                Math.Max(SolverLimits.ResidualRelative * GreatestAmperes, SolverLimits.NoAmperes),
                SolverLimits.VoltsRelative * Math.Abs(emfVolts) * greatestSiemens
            )
        );

    /// <summary>Writes the current of each live conductor to its place in the circuit.</summary>
    public void CopyConductorAmperes(Span<double> amperes)
    {
        for (int c = 0; c < conductors; c++)
            amperes[plan.LiveConductors[c]] = siemens[c] * Across(conductorA[c], conductorB[c]);
    }

    /// <summary>|power in − power out| over power in, or over what rounding may take of all the power that passes the
    /// nodes where that is more.</summary>
    /// <remarks>By Tellegen's theorem the difference is exactly the sum of voltage times residual over the
    /// nodes.</remarks>
    public double PowerImbalance()
    {
        double lost = 0,
            passing = 0;
        for (int i = 0; i < Unknowns; i++)
        {
            lost += Volts[i] * Residual[i];
            passing += Math.Abs(Volts[i]) * Meeting[i];
        }

        const double rounding = SolverLimits.ResidualRelative / SolverLimits.PowerRelative;
        return lost == 0
            ? 0
            : Math.Abs(lost)
                / Math.Max(
                    Math.Max(
                        Math.Abs(emfVolts * SourceAmperes) + Loads.BatteryWatts(),
                        rounding * passing
                    ),
                    SolverLimits.NoPowerWatts
                );
    }

    /// <summary>How the co-content of the whole circuit changes with a multiple of the solved step, in watts, and how
    /// much of this rounding may be.</summary>
    /// <remarks>Element by element: beside a short circuit across the source, which no step changes, the difference of
    /// two sums would have no digit of the rest.</remarks>
    public (double Watts, double Rounding) CoContentChange(double fraction)
    {
        double[] step = Factor.Right;
        step[Unknowns] = 0;
        double sum = 0,
            size = 0;
        for (int c = 0; c < conductors; c++)
        {
            double change = fraction * (step[conductorA[c]] - step[conductorB[c]]);
            Add(siemens[c] * change * (Across(conductorA[c], conductorB[c]) + change / 2));
        }

        for (int j = 0; j < Loads.Count; j++)
        {
            double volts = Across(Loads.Plus[j], Loads.Minus[j]),
                before = Loads.CoContentWatts(j, volts);
            sum += Loads.CoContentWatts(j, volts + fraction * (step[Loads.Plus[j]] - step[Loads.Minus[j]])) - before;
            size += Math.Abs(before);
        }

        if (!IsIdeal)
        {
            double change = fraction * step[Unknowns - 1];
            Add(change * (change / 2 - (emfVolts - Across(Unknowns - 1, Unknowns))) / sourceOhms);
        }

        return (sum, 1e-15 * size);

        void Add(double watts)
        {
            sum += watts;
            size += Math.Abs(watts);
        }
    }

    private bool SolveAssembled(double fixedLast)
    {
        Solutions++;
        Array.Copy(fixedEntries, Factor.Entries, numbering.Pattern.PlaceCount);
        for (int j = 0; j < Loads.Count; j++)
            Factor.Entries[Loads.Entry[j]] += Loads.Siemens[j];
        if (Unknowns > 0 && !IsIdeal)
            Factor.Entries[numbering.Pattern.EntryOf(Unknowns - 1, Unknowns)] += 1 / sourceOhms;
        return Factor.Solve(IsIdeal ? fixedLast : double.NaN);
    }
}
