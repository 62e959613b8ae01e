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

        ImmutableArray<int> Conductors(ImmutableArray<HarnessPart> parts) =>
            [.. parts.Select(p => builder.AddConductor(p.A, p.B))];
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
    }

    /// <summary>The circuit of a bike whose values may be beyond those of a list.</summary>
    internal static HarnessNetwork OfAnyValues(Bike bike) => new(bike, isChecked: true);

    /// <summary>The bike.</summary>
    public Bike Bike { get; }

    /// <summary>Every point, battery plus and minus first.</summary>
    public ImmutableArray<string> Points => Graph.Points;

    /// <summary>The wiring, whose points are the circuit's nodes.</summary>
    internal HarnessGraph Graph { get; }

    internal Circuit Circuit { get; }

    internal int PlusNode { get; } = HarnessGraph.Plus;

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
