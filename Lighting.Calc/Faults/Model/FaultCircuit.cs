using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A bike's harness with everything in it that can go wrong or be probed: one topology for all faults,
/// settings and instruments.</summary>
/// <remarks>
/// What is not there has <see cref="OpenOhms"/>: an open contact, the short from each point to the frame, the lead from
/// each point to the probe's tip. Meter and, when it is used, test lamp are connected between the tip and battery
/// minus. Every point leaks to battery minus through <see cref="LeakOhms"/>, so that a part that is cut off reads 0 V.
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

    public FaultCircuit(Bike bike, FaultFindingOptions options)
    {
        options.Check();
        Bike = bike;
        Options = options;
        Supply = TestSupply.Of(bike, options);
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
        builder.Source(healthy.Plus, healthy.Minus);
        for (int i = 0; i < healthy.ConductorCount; i++)
            builder.AddConductor(healthy.ConductorA[i], healthy.ConductorB[i]);
        for (int i = 0; i < healthy.LoadCount; i++)
            builder.AddLoad(healthy.LoadFeed[i], healthy.LoadReturn[i]);
        FrameNode = NodeOf(Sides.Frame);
        int tip = builder.AddNode();
        Leaks = FromEachPoint(healthy.Minus);
        Shorts = FromEachPoint(FrameNode);
        Leads = FromEachPoint(tip);
        Meter = builder.AddConductor(tip, healthy.Minus);
        TestLamp = builder.AddLoad(tip, healthy.Minus);
        Circuit = builder.Build();

        ImmutableArray<int> FromEachPoint(int to) =>
            [.. Enumerable.Range(0, Points.Length).Select(p => builder.AddConductor(p, to))];
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

    public int Meter { get; }

    public int TestLamp { get; }

    public int FrameNode { get; }

    /// <summary>What feeds the harness while it is tested.</summary>
    public TestSupply Supply { get; }

    public LampSpecification TestLampSpecification { get; }

    /// <summary>The node of a point; −1 when the bike has no such point.</summary>
    public int NodeOf(string point) => Points.IndexOf(point, 0, Points.Length, Name.Comparer);

    private static LampSpecification PublishedTestLamp(Bike bike) =>
        LampTable.TryFind("T4W", bike.SystemVoltage, out PublishedLamp? lamp)
            ? lamp!.Specification
            : throw new InvalidDataException("The lamp table has no T4W, the default test lamp.");
}
