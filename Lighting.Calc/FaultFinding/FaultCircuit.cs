using System.Collections.Immutable;
using Lighting.Calc.Harness;
using Lighting.Calc.Lamps;
using Lighting.Calc.Network;

namespace Lighting.Calc.FaultFinding;

/// <summary>A bike's harness with everything in it that can go wrong or be probed: one topology for all faults, settings and instruments.</summary>
/// <remarks>
/// What is not there has <see cref="OpenOhms"/>: an open contact, the short from each point to the frame, the lead from each
/// point to the probe's tip. The tip hangs on battery minus through the meter, and through the test lamp when that is used.
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

    private readonly Dictionary<string, int> _nodes = new(Name.Comparer);

    public FaultCircuit(Bike bike, FaultFindingOptions options)
    {
        options.Check();
        Bike = bike;
        Options = options;
        Sides = new HarnessSides(bike);
        var points = ImmutableArray.CreateBuilder<string>();
        var builder = new CircuitBuilder();
        int Node(string point)
        {
            if (!_nodes.TryGetValue(point, out int node))
            {
                _nodes.Add(point, node = builder.AddNode());
                points.Add(point);
            }

            return node;
        }

        Supply = TestSupply.Of(bike, options);
        int plus = Node(Bike.BatteryPlus), minus = Node(Bike.BatteryMinus);
        builder.Source(plus, minus);
        Fuses = [.. bike.Fuses.Select(f => builder.AddConductor(Node(Named(f.From, f.Name)), Node(Named(f.To, f.Name))))];
        Contacts = [.. bike.Switches.Select(s => builder.AddConductor(Node(s.From), Node(s.To)))];
        Runs = [.. bike.Runs.Select(r => builder.AddConductor(Node(r.From), Node(r.To)))];
        Lamps = [.. bike.Lamps.Select(l => builder.AddLoad(Node(Named(l.Feed, l.Lamp)), Node(Named(l.Return, l.Lamp))))];
        Points = points.ToImmutable();
        FuseBefore = [.. Points.Select(p => Sides.FuseBefore(p) is { } fuse && Supply.Blows(bike.Fuses[fuse]) ? fuse : -1)];
        int frame = Node(Sides.Frame), tip = builder.AddNode();
        Leaks = [.. Enumerable.Range(0, Points.Length).Select(p => builder.AddConductor(p, minus))];
        Shorts = [.. Enumerable.Range(0, Points.Length).Select(p => builder.AddConductor(p, frame))];
        Leads = [.. Enumerable.Range(0, Points.Length).Select(p => builder.AddConductor(p, tip))];
        Meter = builder.AddConductor(tip, minus);
        TestLamp = builder.AddLoad(tip, minus);
        FrameNode = frame;
        Circuit = builder.Build();
        TestLampSpecification = options.TestLamp ?? PublishedTestLamp(bike);

        string Named(string? point, string owner) =>
            point ?? throw new ArgumentException($"'{owner}' names no point, and the bike has runs.", nameof(bike));
    }

    public Bike Bike { get; }

    public FaultFindingOptions Options { get; }

    public HarnessSides Sides { get; }

    public Circuit Circuit { get; }

    public ImmutableArray<string> Points { get; }

    /// <summary>For each point the fuse that a short there blows; −1 where none does.</summary>
    public ImmutableArray<int> FuseBefore { get; }

    public ImmutableArray<int> Fuses { get; }

    public ImmutableArray<int> Contacts { get; }

    public ImmutableArray<int> Runs { get; }

    public ImmutableArray<int> Lamps { get; }

    public ImmutableArray<int> Leaks { get; }

    public ImmutableArray<int> Shorts { get; }

    public ImmutableArray<int> Leads { get; }

    public int Meter { get; }

    public int TestLamp { get; }

    public int FrameNode { get; }

    /// <summary>What feeds the harness while it is tested.</summary>
    public TestSupply Supply { get; }

    public LampSpecification TestLampSpecification { get; }

    /// <summary>The node of a point, which is its index in <see cref="Points"/> too; −1 when the bike has no such point.</summary>
    public int NodeOf(string point) => _nodes.GetValueOrDefault(point, -1);

    private static LampSpecification PublishedTestLamp(Bike bike) => LampTable.TryFind("T4W", bike.SystemVoltage, out PublishedLamp? lamp)
        ? lamp!.Specification
        : throw new InvalidDataException("The lamp table has no T4W, which is the test lamp where none is given.");
}
