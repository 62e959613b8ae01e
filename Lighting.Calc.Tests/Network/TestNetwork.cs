// A circuit with its values in plain lists, from which the solver and the independent references are both fed.

namespace Lighting.Calc.Tests.Network;

internal sealed record TestConductor(int A, int B, double Ohms);

internal sealed record TestLoad(int Feed, int Return, Load Law);

internal sealed record TestNetwork(
    int Nodes,
    int Plus,
    int Minus,
    double Emf,
    double SourceOhms,
    IReadOnlyList<TestConductor> Conductors,
    IReadOnlyList<TestLoad> Loads
)
{
    /// <summary>The fixed part, without values.</summary>
    public Circuit Circuit()
    {
        var builder = new CircuitBuilder();
        for (int i = 0; i < Nodes; i++)
            builder.AddNode();
        builder.Source(Plus, Minus);
        foreach (TestConductor c in Conductors)
            builder.AddConductor(c.A, c.B);
        foreach (TestLoad l in Loads)
            builder.AddLoad(l.Feed, l.Return);
        return builder.Build();
    }

    /// <summary>A solver with all values set, not yet solved.</summary>
    public CircuitSolver Solver()
    {
        var solver = new CircuitSolver(Circuit());
        Apply(solver);
        return solver;
    }

    /// <summary>The solver's equations without the solver, to try its methods singly; all conductors finite.</summary>
    public NodalSystem Equations()
    {
        Circuit circuit = Circuit();
        var key = new TopologyKey(Conductors.Count, Loads.Count);
        for (int i = 0; i < Conductors.Count; i++)
            key.SetConductor(i, Link.Finite);
        for (int i = 0; i < Loads.Count; i++)
            key.SetLoad(i, connected: true);
        EliminationPlan plan = circuit.PlanFor(key);
        var equations = new NodalSystem(circuit, plan);
        equations.TakeConductors([.. Conductors.Select(c => 1 / c.Ohms)]);
        equations.Loads.Take(plan, [.. Loads.Select(l => l.Law)]);
        equations.TakeSource(Emf, SourceOhms);
        return equations;
    }

    public void Apply(CircuitSolver solver)
    {
        solver.SetSource(Emf, SourceOhms);
        for (int i = 0; i < Conductors.Count; i++)
            solver.SetConductor(i, Conductors[i].Ohms);
        for (int i = 0; i < Loads.Count; i++)
            solver.SetLoad(i, Loads[i].Law);
    }
}
