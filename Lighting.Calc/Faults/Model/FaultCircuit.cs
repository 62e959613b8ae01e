using System.Collections.Concurrent;
using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A bike's harness with everything in it that can go wrong or be probed: one topology for all faults,
/// settings and instruments.</summary>
/// <remarks>
/// Open contacts have <see cref="OpenOhms"/>. Shorts from each point to the frame, leads to the probe's tip, its
/// common lead, the jumper, a bridge between two circuits and crossed wires are absent until they are used, so that
/// they cost nothing. Meter and, when it is used, test lamp are connected between the tip and the common lead, which is
/// on battery minus unless said otherwise. A lamp's return is its holder, which is joined to the point of the list.
/// Every point leaks to battery minus through <see cref="LeakOhms"/>, so that a part that is cut off reads 0 V.
/// Immutable; each thread has its own <see cref="FaultSolver"/>.
/// </remarks>
internal sealed class FaultCircuit
{
    /// <summary>Stands for no connection: with the leak it leaves a cut-off part below 10 mV.</summary>
    public const double OpenOhms = 1e14;

    /// <summary>Leak of every point, 500 times a meter's resistance.</summary>
    public const double LeakOhms = 5e9;

    /// <summary>Least resistance of a connection, below anything a meter shows.</summary>
    public const double LeastOhms = 1e-4;

    /// <summary>Resistance of a wire that touches the frame: common practice, no source.</summary>
    public const double ShortOhms = 0.02;

    private readonly HarnessNetwork _healthy;
    private readonly ConcurrentDictionary<double, TestSupply> _supplies = new();
    private readonly ConcurrentDictionary<Setting, double[]> _warmth = new();
    private double? _chargingTestRpm;

    public FaultCircuit(Bike bike, FaultFindingOptions options)
    {
        options.Check();
        Bike = bike;
        Options = options;
        Supply = TestSupply.Of(bike, options);
        HasCharging =
            Supply.Running is not null
            || options.ConsidersCharging
                && bike.Lighting != LightingSupply.Direct
                && options.Supply is null
                && !bike.Charging.IsEmpty;
        _healthy = new HarnessNetwork(bike);
        Sides = new HarnessSides(bike, Graph);
        FuseBefore =
        [
            .. Points.Select(p => Sides.FuseBefore(p) is { } fuse && Supply.Blows(bike.Fuses[fuse]) ? fuse : -1),
        ];
        Parts = [.. Runs, .. Contacts, .. Fuses];
        ListedOhms = new double[Parts.Length];
        for (int i = 0; i < Runs.Length; i++)
            ListedOhms[Runs[i]] = (
                bike.Runs[i].WireResistance(bike.WireTemperature) + bike.Runs[i].TotalJointResistance
            ).Ohms;
        for (int i = 0; i < Contacts.Length; i++)
            ListedOhms[Contacts[i]] = bike.Switches[i].Resistance.Ohms;
        for (int i = 0; i < Fuses.Length; i++)
            ListedOhms[Fuses[i]] = FuseTable.ResistanceOf(bike.Fuses[i]).Ohms;
        TestLampSpecification = options.TestLamp ?? PublishedTestLamp(bike);

        Circuit healthy = _healthy.Circuit;
        var builder = new CircuitBuilder();
        for (int i = 0; i < healthy.NodeCount; i++)
            builder.AddNode();
        for (int i = 0; i < healthy.ConductorCount; i++)
            builder.AddConductor(healthy.ConductorA[i], healthy.ConductorB[i]);
        FrameNode = NodeOf(Sides.Frame);
        Holders = LampHolder.Of(bike);
        HolderOf = [.. bike.Lamps.Select((_, i) => LampHolder.IndexOf(Holders, i))];
        int[] nodes = [.. Holders.Select(_ => builder.AddNode())];
        for (int i = 0; i < healthy.LoadCount; i++)
            builder.AddLoad(healthy.LoadFeed[i], HolderOf[i] is >= 0 and var h ? nodes[h] : healthy.LoadReturn[i]);
        ColdNodes = healthy.NodeCount + nodes.Length;
        int tip = builder.AddNode(),
            common = builder.AddNode(),
            jumper = builder.AddNode(),
            bridge = builder.AddNode();
        HolderConductors = [.. Holders.Select((h, i) => builder.AddConductor(nodes[i], NodeOf(h.Return)))];
        Leaks = FromEachPoint(healthy.Minus);
        Shorts = FromEachPoint(FrameNode);
        Leads = FromEachPoint(tip);
        Commons = FromEachPoint(common);
        Jumpers = FromEachPoint(jumper);
        Bridges = FromEachPoint(bridge);
        Crossings = WireCrossing.Of(bike, Sides, Graph);
        CrossingConductors =
        [
            .. Crossings.Select(c =>
                (
                    builder.AddConductor(NodeOf(bike.Runs[c.First].From), NodeOf(bike.Runs[c.Second].To)),
                    builder.AddConductor(NodeOf(bike.Runs[c.Second].From), NodeOf(bike.Runs[c.First].To))
                )
            ),
        ];
        Meter = builder.AddConductor(tip, common);
        TestLamp = builder.AddLoad(tip, common);
        if (HasCharging && _healthy.AtGenerator is { IsApart: true } apart)
        {
            int source = builder.AddNode();
            bool isPlus = Graph.Live == HarnessGraph.Plus;
            builder.Source(isPlus ? source : healthy.Plus, isPlus ? healthy.Minus : source);
            Apart = new ApartBattery(
                builder.AddConductor(source, Graph.Live),
                builder.AddConductor(source, apart.Source),
                builder.AddLoad(healthy.Plus, healthy.Minus)
            );
        }
        else
        {
            builder.Source(healthy.Plus, healthy.Minus);
        }

        Circuit = builder.Build();
        MeasuredParts = MeasuredPart.Of(this);
        Generator = new GeneratorBench(bike);

        ImmutableArray<int> FromEachPoint(int to) =>
            [.. Enumerable.Range(0, Points.Length).Select(p => builder.AddConductor(p, to))];
    }

    /// <summary>Resistance of each part in a setting of the healthy bike over that without current, as its wires warm
    /// (<see cref="WireHeat"/>): faults are looked for on a bike in use.</summary>
    /// <exception cref="NetworkNotSolvedException">The setting has no operating point.</exception>
    public double[] WarmthIn(Setting setting) => _warmth.GetOrAdd(setting, Warmth);

    private double[] Warmth(Setting setting)
    {
        var warmth = new double[ListedOhms.Length];
        Array.Fill(warmth, 1);
        if (!_healthy.Heat.IsAny)
            return warmth;
        HarnessSolver solver = _healthy.CreateSolver();
        solver.SetSupply(ElectricPotential.FromVolts(Supply.FullVolts));
        if (Supply.Coil is not null || Supply.Running is not null)
            solver.SetBatteryResistance(ElectricResistance.Zero);
        SolvedCircuit solved = solver.Solve(setting, solver.CarryingIn(setting));
        for (int i = 0; i < Runs.Length; i++)
            if (ListedOhms[Runs[i]] > 0)
                warmth[Runs[i]] =
                    (solved.WireOhms[i] + Bike.Runs[i].TotalJointResistance.Ohms) / ListedOhms[Runs[i]];
        return warmth;
    }

    public Bike Bike { get; }

    public FaultFindingOptions Options { get; }

    public HarnessGraph Graph => _healthy.Graph;

    public HarnessSides Sides { get; }

    public Circuit Circuit { get; }

    /// <summary>The points, each with its node as index.</summary>
    public ImmutableArray<string> Points => _healthy.Points;

    /// <summary>For each point the fuse that a short there blows; −1 where none does.</summary>
    public ImmutableArray<int> FuseBefore { get; }

    public ImmutableArray<int> Fuses => _healthy.FuseConductors;

    public ImmutableArray<int> Contacts => _healthy.ContactConductors;

    public ImmutableArray<int> Runs => _healthy.RunConductors;

    public ImmutableArray<int> Lamps => _healthy.Loads;

    /// <summary>The conductors of runs, contacts and fuses, in this order.</summary>
    public ImmutableArray<int> Parts { get; }

    /// <summary>Resistance of each conductor of <see cref="Parts"/> by the lists.</summary>
    public double[] ListedOhms { get; }

    public ImmutableArray<int> Leaks { get; }

    public ImmutableArray<int> Shorts { get; }

    public ImmutableArray<int> Leads { get; }

    /// <summary>From each point to the common lead of meter and test lamp.</summary>
    public ImmutableArray<int> Commons { get; }

    /// <summary>From each point to the jumper.</summary>
    public ImmutableArray<int> Jumpers { get; }

    /// <summary>From each point to a place where two circuits touch.</summary>
    public ImmutableArray<int> Bridges { get; }

    /// <summary>The holders of the lamps, each one node behind those of the points.</summary>
    public ImmutableArray<LampHolder> Holders { get; }

    /// <summary>For each lamp the index of its holder; −1 where it has none.</summary>
    public ImmutableArray<int> HolderOf { get; }

    /// <summary>From each holder to its return point.</summary>
    public ImmutableArray<int> HolderConductors { get; }

    /// <summary>The pairs of wires that can be exchanged.</summary>
    public ImmutableArray<WireCrossing> Crossings { get; }

    /// <summary>For each the two wires as they are when exchanged.</summary>
    public ImmutableArray<(int First, int Second)> CrossingConductors { get; }

    /// <summary>Number of the nodes that belong to the harness: its points, then its holders.</summary>
    public int ColdNodes { get; }

    /// <summary>Place of each of them in an order of elimination, without the battery: the minus is the last.</summary>
    public int[] ColdSlots => field ??= MakeColdSlots();

    public int Meter { get; }

    public int TestLamp { get; }

    /// <summary>Where the generator joins the harness apart from the battery: how the source is put to either, and the
    /// battery as a load; null where the generator joins at the battery.</summary>
    public ApartBattery? Apart { get; }

    public int FrameNode { get; }

    /// <summary>The generator, unplugged.</summary>
    public GeneratorBench Generator { get; }

    /// <summary>Whether a test is an ammeter in the lead of the battery.</summary>
    public bool IsInBatteryLead(in TestPlace test) =>
        test.Instrument == Instrument.Ammeter && test.Index == Fuses.Length;

    /// <summary>The parts with two ends for an ohmmeter.</summary>
    public ImmutableArray<MeasuredPart> MeasuredParts { get; }

    /// <summary>What feeds the harness while it is tested, unless a test states another engine speed.</summary>
    public TestSupply Supply { get; }

    /// <summary>Whether the engine runs in some tests, so that faults of the charging system show.</summary>
    public bool HasCharging { get; }

    /// <summary>The most a meter can show in any test.</summary>
    public double MostVolts =>
        HasCharging && Supply.Running is null ? SupplyAt(ChargingTestRpm).MostVolts : Supply.MostVolts;

    /// <summary>Engine speed at which charging is tested unless a reading states another.</summary>
    public double ChargingTestRpm =>
        Supply.Running?.Rpm
        ?? (_chargingTestRpm ??= RunningSupply.Of(Bike, Options.EngineSpeed?.RevolutionsPerMinute).Rpm);

    /// <summary>What feeds the harness at an engine speed; null for <see cref="Supply"/>.</summary>
    /// <exception cref="ArgumentException">The speed is outside the charging list.</exception>
    public TestSupply SupplyAt(double? rpm) =>
        rpm is { } speed ? _supplies.GetOrAdd(speed, n => TestSupply.At(Bike, Options, n)) : Supply;

    public LampSpecification TestLampSpecification { get; }

    /// <summary>The node of a point; −1 when the bike has no such point.</summary>
    public int NodeOf(string point) => Points.IndexOf(point, 0, Points.Length, Name.Comparer);

    /// <summary>Whether a lamp is one to look at, not an ignition or a horn.</summary>
    public bool GivesLight(int lamp) => Bike.Lamps[lamp].Specification.GivesLight;

    /// <summary>What is unplugged in a test; null for nothing.</summary>
    public string? UnpluggedIn(in TestPlace test) =>
        test.Unplugged == TestPlace.EveryLampOut ? Reading.EveryLamp
        : test.IsUnplugged ? MeasuredParts[test.Unplugged].Name
        : null;

    /// <summary>Whether a switch has to be held, as a brake lever or a horn button.</summary>
    public bool IsHeld(string name) =>
        new MomentarySwitches(Bike, MomentarySwitches.UsualWords).Contains(name);

    /// <summary>The fuse that a test lamp replaces; −1 for any other test.</summary>
    public int FuseOf(in TestPlace test) => test.Instrument == Instrument.TestLamp ? test.Index - Points.Length : -1;

    private int[] MakeColdSlots()
    {
        var slots = new int[ColdNodes];
        int slot = 0;
        foreach (int node in Circuit.Order.Append(Circuit.Minus).Where(n => n < ColdNodes))
            slots[node] = slot++;
        return slots;
    }

    private static LampSpecification PublishedTestLamp(Bike bike) =>
        LampTable.TryFind("T4W", bike.SystemVoltage, out PublishedLamp? lamp)
            ? lamp!.Specification
            : throw new InvalidDataException("The lamp table has no T4W, the default test lamp.");
}
