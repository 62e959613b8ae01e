using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Network;

/// <summary>A bike's harness as a circuit: which point is which node, which part is which conductor. Built once, solved many times.</summary>
/// <remarks>
/// Immutable and safe to share between threads; <see cref="CreateSolver"/> gives each thread its own solver.
/// Without runs every lamp hangs straight on the battery (behind the one fuse, if there is one) and its
/// <c>lit when</c> decides; with runs the contacts decide.
/// </remarks>
public sealed class HarnessNetwork
{
    private readonly Dictionary<string, int> _nodes;

    /// <summary>Builds the circuit of a bike.</summary>
    /// <param name="bike">The bike; with runs, every lamp and fuse names its points.</param>
    /// <exception cref="ArgumentException">A lamp or fuse of a bike with runs names no points, or a bike without runs has several fuses.</exception>
    public HarnessNetwork(Bike bike)
    {
        Bike = bike;
        _nodes = new Dictionary<string, int>(Name.Comparer);
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

        int plus = Node(Bike.BatteryPlus), minus = Node(Bike.BatteryMinus);
        builder.Source(plus, minus);
        if (bike.HasNetwork)
        {
            FuseConductors = [.. bike.Fuses.Select(f => builder.AddConductor(Node(Named(f.From, f.Name)), Node(Named(f.To, f.Name))))];
            ContactConductors = [.. bike.Switches.Select(s => builder.AddConductor(Node(s.From), Node(s.To)))];
            RunConductors = [.. bike.Runs.Select(r => builder.AddConductor(Node(r.From), Node(r.To)))];
            Loads = [.. bike.Lamps.Select(l => builder.AddLoad(Node(Named(l.Feed, l.Lamp)), Node(Named(l.Return, l.Lamp))))];
        }
        else
        {
            if (bike.Fuses.Length > 1)
                throw new ArgumentException("A bike without runs has one fuse at most; several need runs to say what each feeds.", nameof(bike));
            int feed = Node(bike.LivePoint), back = Node(bike.EarthPoint);
            if (bike.Fuses is [var fuse])
            {
                feed = Node($"{fuse.Name} fuse out");
                FuseConductors = [builder.AddConductor(Node(bike.LivePoint), feed)];
            }

            Loads = [.. bike.Lamps.Select(_ => builder.AddLoad(feed, back))];
        }

        Points = points.ToImmutable();
        PlusNode = plus;
        Circuit = builder.Build();
        Dangling = new DanglingContacts(Circuit, ContactConductors.AsSpan());

        string Named(string? point, string owner) =>
            point ?? throw new ArgumentException($"'{owner}' names no point, and the bike has runs.", nameof(bike));
    }

    /// <summary>The same circuit for another bike that is wired alike: one whose lists name the same parts and points in the same order.</summary>
    internal HarnessNetwork(Bike bike, HarnessNetwork alike)
    {
        Bike = bike;
        _nodes = alike._nodes;
        (Points, PlusNode, Circuit, Dangling) = (alike.Points, alike.PlusNode, alike.Circuit, alike.Dangling);
        (FuseConductors, ContactConductors, RunConductors, Loads) = (alike.FuseConductors, alike.ContactConductors, alike.RunConductors, alike.Loads);
    }

    /// <summary>The bike.</summary>
    public Bike Bike { get; }

    /// <summary>Every point, battery plus and minus first.</summary>
    public ImmutableArray<string> Points { get; }

    internal Circuit Circuit { get; }

    internal DanglingContacts Dangling { get; }

    internal int PlusNode { get; }

    internal ImmutableArray<int> FuseConductors { get; } = [];

    internal ImmutableArray<int> ContactConductors { get; } = [];

    internal ImmutableArray<int> RunConductors { get; } = [];

    internal ImmutableArray<int> Loads { get; }

    /// <summary>Makes a solver for one thread, at the bike's charging volts.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A wire temperature, length, resistance or quantity of the bike is outside its range.</exception>
    public HarnessSolver CreateSolver() => new(this);

    internal int NodeOf(string point) => _nodes.TryGetValue(point, out int node)
        ? node
        : throw new ArgumentException($"The bike has no point '{point}'.", nameof(point));
}
