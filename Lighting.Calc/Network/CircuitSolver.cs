// The solver as its users see it: set values, solve, read.
namespace Lighting.Calc.Network;

/// <summary>Finds the operating point of a <see cref="Circuit"/>. One thread at a time; solving again allocates nothing.</summary>
/// <remarks>
/// Conductors start open and loads absent. Volts and currents can be read after <see cref="SolveStatus.Solved"/> only.
/// Of several points that the circuit can hold the bright one is found, on cold and warm starts alike.
/// </remarks>
internal sealed class CircuitSolver
{
    /// <summary>Workspaces kept for sets of switch positions met before.</summary>
    private const int MostKnown = 64;

    private readonly Circuit circuit;
    private readonly Dictionary<Plan, LiveCircuit> known = [];
    private readonly TopologyKey key;
    private readonly double[] conductanceSiemens;
    private readonly Load[] loads;
    private readonly bool[] connected;
    private double emfVolts;
    private double sourceOhms;
    private Plan plan;
    private LiveCircuit live;
    private ZeroOhmCurrents? zeroOhm;
    private bool zeroOhmIsCurrent;
    private DropOutSearch? dropOuts;
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
        plan = circuit.PlanFor(key);
        live = new LiveCircuit(plan, circuit);
    }

    public SolveDiagnostics Diagnostics { get; private set; }

    public double SourceAmperes => Solved.SourceAmperes;

    private LiveCircuit Solved => status == SolveStatus.Solved
        ? live
        : throw new InvalidOperationException("There is no solution to read: the circuit is not solved.");

    /// <summary>Zero merges the two nodes; infinity opens the conductor.</summary>
    public void SetConductor(int conductor, double ohms)
    {
        if (!(ohms >= 0))
            throw new ArgumentOutOfRangeException(nameof(ohms), ohms, "A resistance must be zero or more.");
        status = null;
        conductanceSiemens[conductor] = 1 / ohms;
        Link link = ohms == 0 ? Link.Merged : double.IsPositiveInfinity(ohms) ? Link.Open : Link.Finite;
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

    /// <summary>Resistance zero is an ideal source; infinity takes the source out.</summary>
    public void SetSource(double emf, double ohms)
    {
        if (!double.IsFinite(emf))
            throw new ArgumentOutOfRangeException(nameof(emf), emf, "The source's volts must be finite.");
        if (!(ohms >= 0))
            throw new ArgumentOutOfRangeException(nameof(ohms), ohms, "A resistance must be zero or more.");
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
        if (live.Unknowns == 0 && sourceOhms == 0 && emfVolts != 0)
        {
            Diagnostics = new SolveDiagnostics(SolveStages.None, 0, circuit.Plus, double.PositiveInfinity, double.PositiveInfinity, false);
            status = SolveStatus.DeadShort;
            return SolveStatus.DeadShort;
        }

        status = OperatingPoint.Find(live, warmStart && warm, out SolveDiagnostics found)
            ? SolveStatus.Solved
            : SolveStatus.NotConverged;
        Diagnostics = found with { WorstNode = live.Unknowns == 0 ? -1 : plan.NodeOfSlot[found.WorstNode] };
        warm = status == SolveStatus.Solved;
        return status.Value;
    }

    public double NodeVolts(int node)
    {
        int slot = plan.Slot[node];
        return Solved.Across(slot, live.Unknowns);
    }

    public double ConductorAmperes(int conductor)
    {
        LiveCircuit solved = Solved;
        switch (key.Conductor(conductor))
        {
            case Link.Finite:
                return solved.Across(plan.Slot[circuit.ConductorA[conductor]], plan.Slot[circuit.ConductorB[conductor]])
                    * conductanceSiemens[conductor];
            case Link.Merged:
                zeroOhm ??= new ZeroOhmCurrents(plan.ZeroOhm, circuit);
                if (!zeroOhmIsCurrent)
                    zeroOhm.Update(this);
                zeroOhmIsCurrent = true;
                return zeroOhm.Amperes(conductor);
            default:
                return 0;
        }
    }

    /// <summary>Volts from feed to return, whether or not the load is connected.</summary>
    public double LoadVolts(int load) =>
        Solved.Across(plan.Slot[circuit.LoadFeed[load]], plan.Slot[circuit.LoadReturn[load]]);

    /// <summary>Current from feed to return.</summary>
    public double LoadAmperes(int load)
    {
        int place = Solved.Loads.PlaceOf(load);
        if (place < 0)
            return 0;
        return loads[load].Reversed ? -live.Loads.Amperes[place] : live.Loads.Amperes[place];
    }

    /// <summary>A driver that gets volts, but less than its minimum.</summary>
    public bool HasDroppedOut(int load)
    {
        int place = Solved.Loads.PlaceOf(load);
        return place >= live.Loads.FirstDriver && live.Loads.IsDark(place);
    }

    /// <summary>Searches for other points that the circuit can hold, which <see cref="MayDropOut"/> then tells of.</summary>
    public void FindDropOuts()
    {
        LiveCircuit solved = Solved;
        dropOuts ??= new DropOutSearch(solved);
        dropOuts.Run();
        dropOutsAreCurrent = true;
    }

    /// <summary>A lit driver that is dark at another point which the circuit can hold as well.</summary>
    public bool MayDropOut(int load)
    {
        int place = Solved.Loads.PlaceOf(load);
        if (dropOuts is null || !dropOutsAreCurrent)
            throw new InvalidOperationException("Call FindDropOuts after solving.");
        return place >= 0 && dropOuts.MayDropOut(place);
    }

    internal Link LinkOf(int conductor) => key.Conductor(conductor);

    private void TakeValues()
    {
        if (topologyChanged)
        {
            plan = circuit.PlanFor(key);
            if (!known.TryGetValue(plan, out LiveCircuit? found))
            {
                if (known.Count == MostKnown)
                    known.Clear();
                known[plan] = found = new LiveCircuit(plan, circuit);
            }

            live = found;
            zeroOhm = null;
            dropOuts = null;
            warm = false;
        }

        if (topologyChanged || conductorsChanged)
            live.TakeConductors(conductanceSiemens);
        if (topologyChanged || loadsChanged)
            live.Loads.Take(circuit, loads);
        live.TakeSource(emfVolts, sourceOhms);
        topologyChanged = conductorsChanged = loadsChanged = false;
    }
}
