using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A bike's harness as a circuit: which point is which node, which part is which conductor. Built once, solved
/// many times.</summary>
/// <remarks>
/// Immutable and safe to share between threads; <see cref="CreateSolver"/> gives each thread its own solver.
/// Without runs every lamp hangs straight on the battery (behind the one fuse, if there is one) and its
/// <c>lit when</c> decides; with runs the contacts decide.
/// </remarks>
public sealed class HarnessNetwork
{
    /// <summary>Builds the circuit of a bike.</summary>
    /// <param name="bike">The bike.</param>
    /// <exception cref="ArgumentException">The bike has faults (<see cref="Bike.Validate"/>).</exception>
    public HarnessNetwork(Bike bike)
        : this(bike, isChecked: false) { }

    private HarnessNetwork(Bike bike, bool isChecked)
    {
        if (!isChecked)
            BikeValidation.Require(bike);
        Bike = bike;
        Graph = new HarnessGraph(bike);
        var builder = new CircuitBuilder();
        foreach (string _ in Points)
            builder.AddNode();
        builder.Source(HarnessGraph.Plus, HarnessGraph.Minus);
        FuseConductors = Conductors(Graph.Fuses);
        ContactConductors = Conductors(Graph.Contacts);
        RunConductors = Conductors(Graph.Runs);
        Loads = [.. Graph.Lamps.Select(l => builder.AddLoad(l.A, l.B))];
        Circuit = builder.Build();
        Heat = WireHeat.Of(bike);
        Source = Graph.Live;
        AtBattery = this;
        AtGenerator = JointOf(bike, Graph) is var joint && joint != Graph.Live
            ? new HarnessNetwork(this, joint, null)
            : this;

        ImmutableArray<int> Conductors(ImmutableArray<HarnessPart> parts) =>
            [.. parts.Select(p => builder.AddConductor(p.A, p.B))];
    }

    // Fed at a point apart from the battery, which is then one of the parts.
    private HarnessNetwork(HarnessNetwork atBattery, int source, HarnessNetwork? alike)
    {
        (Bike, Graph, Heat) = (atBattery.Bike, atBattery.Graph, atBattery.Heat);
        (FuseConductors, ContactConductors, RunConductors, Loads) = (
            atBattery.FuseConductors,
            atBattery.ContactConductors,
            atBattery.RunConductors,
            atBattery.Loads
        );
        (Source, AtBattery, AtGenerator) = (source, atBattery, this);
        Battery = Loads.Length;
        if (alike is not null)
        {
            Circuit = alike.Circuit;
            return;
        }

        Circuit harness = atBattery.Circuit;
        var builder = new CircuitBuilder();
        for (int i = 0; i < harness.NodeCount; i++)
            builder.AddNode();
        bool isPlus = Graph.Live == HarnessGraph.Plus;
        builder.Source(isPlus ? source : HarnessGraph.Plus, isPlus ? HarnessGraph.Minus : source);
        for (int i = 0; i < harness.ConductorCount; i++)
            builder.AddConductor(harness.ConductorA[i], harness.ConductorB[i]);
        for (int i = 0; i < harness.LoadCount; i++)
            builder.AddLoad(harness.LoadFeed[i], harness.LoadReturn[i]);
        builder.AddLoad(HarnessGraph.Plus, HarnessGraph.Minus);
        Circuit = builder.Build();
    }

    /// <summary>The same circuit for another bike that is wired alike: one whose lists name the same parts and points
    /// in the same order.</summary>
    internal HarnessNetwork(Bike bike, HarnessNetwork alike)
    {
        Bike = bike;
        Heat = WireHeat.Of(bike);
        (Graph, Circuit) = (alike.Graph, alike.Circuit);
        (FuseConductors, ContactConductors, RunConductors, Loads) = (
            alike.FuseConductors,
            alike.ContactConductors,
            alike.RunConductors,
            alike.Loads
        );
        Source = Graph.Live;
        AtBattery = this;
        AtGenerator = alike.AtGenerator.IsApart
            ? new HarnessNetwork(this, alike.AtGenerator.Source, alike.AtGenerator)
            : this;
    }

    /// <summary>Index of the point at which the generator joins a harness: that of the live terminal, unless the bike
    /// names another.</summary>
    internal static int JointOf(Bike bike, HarnessGraph graph) =>
        bike is { HasNetwork: true, GeneratorPoint: { } named, Lighting: LightingSupply.Battery }
            ? graph.NumberOf(named)
            : graph.Live;

    /// <summary>The circuit of a bike whose values may be beyond those of a list.</summary>
    internal static HarnessNetwork OfAnyValues(Bike bike) => new(bike, isChecked: true);

    /// <summary>The bike.</summary>
    public Bike Bike { get; }

    /// <summary>Every point, battery plus and minus first.</summary>
    public ImmutableArray<string> Points => Graph.Points;

    /// <summary>The wiring, whose points are the circuit's nodes.</summary>
    internal HarnessGraph Graph { get; }

    internal Circuit Circuit { get; }

    internal int PlusNode => Circuit.Plus;

    /// <summary>Index of the point on the live side at which the source is.</summary>
    internal int Source { get; }

    /// <summary>The battery as a load; −1 where it is the source.</summary>
    internal int Battery { get; } = -1;

    /// <summary>Whether the source is apart from the battery.</summary>
    internal bool IsApart => Battery >= 0;

    /// <summary>The harness fed by the battery.</summary>
    internal HarnessNetwork AtBattery { get; }

    /// <summary>The harness fed where the generator joins it: the same unless the bike names a point.</summary>
    internal HarnessNetwork AtGenerator { get; }

    internal ImmutableArray<int> FuseConductors { get; }

    internal ImmutableArray<int> ContactConductors { get; }

    internal ImmutableArray<int> RunConductors { get; }

    internal ImmutableArray<int> Loads { get; }

    /// <summary>How the resistance of each run's wire grows with its current.</summary>
    internal WireHeat Heat { get; }

    /// <summary>Makes a solver for one thread, at the bike's charging voltage behind the battery's resistance; with the
    /// engine running set that to zero, or use <c>RunningEngine</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A wire temperature, length, resistance or quantity of the bike is
    /// outside its range.</exception>
    public HarnessSolver CreateSolver() => new(this);

    internal int NodeOf(string point) =>
        Graph.NumberOf(point) is >= 0 and int node
            ? node
            : throw new ArgumentException($"The bike has no point '{point}'.", nameof(point));
}
