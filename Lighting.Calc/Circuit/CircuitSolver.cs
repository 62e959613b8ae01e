// The solver as its users see it: set values, solve, read.
namespace Lighting.Calc;

/// <summary>Finds the operating point of a <see cref="Circuit"/>. One thread at a time; solving again allocates
/// nothing.</summary>
/// <remarks>
/// Conductors start open and loads absent. Voltages and currents can be read after <see cref="SolveStatus.Solved"/>
/// only. Of several stable operating points the bright one is found, on cold and warm starts alike.
/// </remarks>
internal sealed class CircuitSolver
{
    private readonly Circuit circuit;
    private readonly TopologyKey key;
    private readonly double[] conductanceSiemens;
    private readonly Load[] loads;
    private readonly bool[] connected;
    private double emfVolts;
    private double sourceOhms;
    private NodalSystem? live;
    private ZeroOhmCurrents? zeroOhm;
    private UndervoltageDropout? dropOuts;
    private EliminationPlan? planned;
    private bool zeroOhmIsCurrent;
    private bool dropOutsAreCurrent;
    private bool topologyChanged = true;
    private bool conductorsChanged;
    private bool loadsChanged;
    private bool warm;
    private SolveStatus? status;

    public CircuitSolver(Circuit circuit)
    {
        this.circuit = circuit;
        key = new TopologyKey(circuit.ConductorCount, circuit.LoadCount);
        conductanceSiemens = new double[circuit.ConductorCount];
        loads = new Load[circuit.LoadCount];
        connected = new bool[circuit.LoadCount];
        Array.Fill(connected, true);
    }

    public SolveDiagnostics Diagnostics { get; private set; }

    /// <summary>Whether the values as set are solved.</summary>
    public bool IsSolved => status == SolveStatus.Solved;

    public double SourceAmperes => Solved.SourceAmperes;

    private EliminationPlan EliminationPlan => Live.EliminationPlan;

    private NodalSystem Live => live ?? throw new InvalidOperationException("The circuit must be solved first.");

    private NodalSystem Solved =>
        status == SolveStatus.Solved
            ? Live
            : throw new InvalidOperationException("The circuit must be solved before a result is read.");

    /// <summary>Zero merges the two nodes; infinity opens the conductor.</summary>
    public void SetConductor(int conductor, double ohms)
    {
        if (!(ohms >= 0))
            throw new ArgumentOutOfRangeException(nameof(ohms), ohms, "Resistance must be zero or more.");
        status = null;
        double siemens = 1 / ohms;
        conductanceSiemens[conductor] = siemens;
        Link link =
            siemens == 0 ? Link.Open
            : double.IsFinite(siemens) ? Link.Finite
            : Link.Merged;
        topologyChanged |= key.SetConductor(conductor, link);
        conductorsChanged = true;
    }

    public void SetLoad(int load, in Load law)
    {
        status = null;
        loads[load] = law;
        topologyChanged |= key.SetLoad(load, connected[load] && law.Quantity > 0);
        loadsChanged = true;
    }

    public void SetLoadConnected(int load, bool isConnected)
    {
        status = null;
        connected[load] = isConnected;
        topologyChanged |= key.SetLoad(load, isConnected && loads[load].Quantity > 0);
    }

    /// <summary>Zero resistance is an ideal source; infinity disconnects the source.</summary>
    public void SetSource(double emf, double ohms)
    {
        if (!double.IsFinite(emf))
            throw new ArgumentOutOfRangeException(nameof(emf), emf, "Source voltage must be finite.");
        if (!(ohms >= 0))
            throw new ArgumentOutOfRangeException(nameof(ohms), ohms, "Resistance must be zero or more.");
        status = null;
        emfVolts = emf;
        sourceOhms = ohms;
    }

    /// <param name="warmStart">Start from the last solution: faster after small changes, and the same answer.</param>
    public SolveStatus Solve(bool warmStart = false)
    {
        TakeValues();
        zeroOhmIsCurrent = false;
        dropOutsAreCurrent = false;
        if (Live.Unknowns == 0 && sourceOhms == 0 && emfVolts != 0)
        {
            Diagnostics = new SolveDiagnostics(
                SolveStages.None,
                0,
                circuit.Plus,
                double.PositiveInfinity,
                double.PositiveInfinity,
                false
            );
            status = SolveStatus.DeadShort;
            return SolveStatus.DeadShort;
        }

        status = StableOperatingPoint.Find(Live, warmStart && warm, out SolveDiagnostics found)
            ? SolveStatus.Solved
            : SolveStatus.NotConverged;
        Diagnostics = found with
        {
            WorstNode = Live.Unknowns == 0 ? -1 : EliminationPlan.Numbering.NodeOfSlot[found.WorstNode],
        };
        warm = status == SolveStatus.Solved;
        return status.Value;
    }

    public double NodeVolts(int node)
    {
        int slot = EliminationPlan.Numbering.Slot[node];
        return Solved.Across(slot, Live.Unknowns);
    }

    public double ConductorAmperes(int conductor)
    {
        NodalSystem solved = Solved;
        switch (key.Conductor(conductor))
        {
            case Link.Finite:
                return solved.Across(
                        EliminationPlan.Numbering.Slot[circuit.ConductorA[conductor]],
                        EliminationPlan.Numbering.Slot[circuit.ConductorB[conductor]]
                    ) * conductanceSiemens[conductor];
            case Link.Merged:
                zeroOhm ??= new ZeroOhmCurrents(circuit);
                if (!zeroOhmIsCurrent)
                    zeroOhm.Update(this, EliminationPlan.ZeroOhm);
                zeroOhmIsCurrent = true;
                return zeroOhm.Amperes(conductor);
            default:
                return 0;
        }
    }

    /// <summary>All voltages and currents at once.</summary>
    /// <param name="nodeVolts">Receives the voltages of the first nodes.</param>
    /// <param name="conductorAmperes">Receives the current of each conductor.</param>
    public void Copy(Span<double> nodeVolts, Span<double> conductorAmperes)
    {
        NodalSystem solved = Solved;
        int[] slot = solved.EliminationPlan.Numbering.Slot;
        for (int v = 0; v < nodeVolts.Length; v++)
            nodeVolts[v] = solved.Across(slot[v], solved.Unknowns);
        conductorAmperes.Clear();
        solved.CopyConductorAmperes(conductorAmperes);
        for (int i = 0; i < conductorAmperes.Length; i++)
        {
            if (key.Conductor(i) == Link.Merged)
                conductorAmperes[i] = ConductorAmperes(i);
        }
    }

    /// <summary>Voltage from feed to return, whether or not the load is connected.</summary>
    public double LoadVolts(int load) =>
        Solved.Across(
            EliminationPlan.Numbering.Slot[circuit.LoadFeed[load]],
            EliminationPlan.Numbering.Slot[circuit.LoadReturn[load]]
        );

    /// <summary>Current from feed to return.</summary>
    public double LoadAmperes(int load)
    {
        int place = Solved.Loads.PlaceOf(load);
        if (place < 0)
            return 0;
        return loads[load].Reversed ? -Live.Loads.Amperes[place] : Live.Loads.Amperes[place];
    }

    /// <summary>By how much an ohm more in each of some conductors raises the voltages of some loads together, to first
    /// order: the current in it times that which a current through those loads would send through it.</summary>
    public double[] VoltsPerOhm(IEnumerable<int> ofLoads, IReadOnlyList<int> ofConductors)
    {
        NodalSystem solved = Solved;
        int[] slot = EliminationPlan.Numbering.Slot;
        double[] volts = solved.Factor.Right;
        Array.Clear(volts);
        foreach (int load in ofLoads)
        {
            volts[slot[circuit.LoadFeed[load]]]++;
            volts[slot[circuit.LoadReturn[load]]]--;
        }

        if (!solved.SolveRight())
            return new double[ofConductors.Count];
        volts[solved.Unknowns] = 0;
        return
        [
            .. ofConductors.Select(c =>
                key.Conductor(c) == Link.Finite
                    ? ConductorAmperes(c)
                        * conductanceSiemens[c]
                        * (volts[slot[circuit.ConductorA[c]]] - volts[slot[circuit.ConductorB[c]]])
                    : 0
            ),
        ];
    }

    /// <summary>The voltages of all nodes once a conductor has other ohms, of the loads to first order; null where only
    /// a solution tells.</summary>
    public double[]? NodeVoltsWith(int conductor, double ohms)
    {
        NodalSystem solved = Solved;
        int[] slot = EliminationPlan.Numbering.Slot;
        (int a, int b) = (slot[circuit.ConductorA[conductor]], slot[circuit.ConductorB[conductor]]);
        if (key.Conductor(conductor) != Link.Finite || !(ohms > 0) || a == b)
            return null;
        double[] change = solved.Factor.Right;
        Array.Clear(change);
        change[a]++;
        change[b]--;
        if (!solved.SolveRight())
            return null;
        change[solved.Unknowns] = 0;
        // One conductance changes: J. Sherman and W. J. Morrison, "Adjustment of an inverse matrix corresponding to a
        // change in one element of a given matrix", 1950.
        double more = 1 / ohms - conductanceSiemens[conductor],
            factor = -more * solved.Across(a, b) / (1 + more * (change[a] - change[b]));
        return [.. slot.Select(s => solved.Across(s, solved.Unknowns) + factor * change[s])];
    }

    /// <summary>A driver whose voltage is below its minimum.</summary>
    public bool HasDroppedOut(int load)
    {
        int place = Solved.Loads.PlaceOf(load);
        return place >= Live.Loads.FirstDriver && Live.Loads.IsDark(place);
    }

    /// <summary>Searches for other stable operating points, for <see cref="MayDropOut"/>.</summary>
    public void FindDropOuts()
    {
        NodalSystem solved = Solved;
        (dropOuts ??= new UndervoltageDropout(solved)).Run();
        dropOutsAreCurrent = true;
    }

    /// <summary>A lit driver that is dark at another stable operating point.</summary>
    public bool MayDropOut(int load)
    {
        int place = Solved.Loads.PlaceOf(load);
        if (!dropOutsAreCurrent || dropOuts is null)
            throw new InvalidOperationException("Call FindDropOuts after solving.");
        return place >= 0 && dropOuts.MayDropOut(place);
    }

    /// <summary>The plan of the elements as they are set, solved or not.</summary>
    internal EliminationPlan Planned()
    {
        if (!topologyChanged)
            return EliminationPlan;
        return planned is { } plan && plan.Key.Equals(key) ? plan : planned = circuit.PlanFor(key);
    }

    internal Link LinkOf(int conductor) => key.Conductor(conductor);

    private void TakeValues()
    {
        if (topologyChanged)
        {
            if (live is null)
                live = new NodalSystem(circuit, Planned());
            else
                live.Take(Planned());
            warm = false;
        }

        if (topologyChanged || conductorsChanged)
            Live.TakeConductors(conductanceSiemens);
        if (topologyChanged || loadsChanged)
            Live.Loads.Take(EliminationPlan, loads);
        Live.TakeSource(emfVolts, sourceOhms);
        topologyChanged = conductorsChanged = loadsChanged = false;
    }
}
