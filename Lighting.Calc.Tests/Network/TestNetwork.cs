// A circuit with its values in plain lists, from which the solver and the independent references are both fed.
using Lighting.Calc.Network;

namespace Lighting.Calc.Tests.Network;

internal sealed record TestConductor(int A, int B, double Ohms);

internal sealed record TestLoad(int Feed, int Return, Load Law);

internal sealed record TestNetwork(
    int Nodes, int Plus, int Minus, double Emf, double SourceOhms, IReadOnlyList<TestConductor> Conductors, IReadOnlyList<TestLoad> Loads)
{
    /// <summary>A solver with all values set, not yet solved.</summary>
    public CircuitSolver Solver()
    {
        var builder = new CircuitBuilder();
        for (int i = 0; i < Nodes; i++)
            builder.AddNode();
        builder.Source(Plus, Minus);
        foreach (TestConductor c in Conductors)
            builder.AddConductor(c.A, c.B);
        foreach (TestLoad l in Loads)
            builder.AddLoad(l.Feed, l.Return);
        var solver = new CircuitSolver(builder.Build());
        Apply(solver);
        return solver;
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
