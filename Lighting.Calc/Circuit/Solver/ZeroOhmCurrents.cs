// Currents in the conductors without resistance, worked out when first asked for.
namespace Lighting.Calc;

/// <summary>Workspace for <see cref="ZeroOhmPlan"/>.</summary>
internal sealed class ZeroOhmCurrents(Circuit circuit)
{
    private readonly Factor factor = new(circuit.NodeCount);
    private ZeroOhmPlan? plan;

    /// <summary>Spreads the currents that all other elements bring into the merged nodes.</summary>
    public void Update(CircuitSolver solver, ZeroOhmPlan merged)
    {
        plan = merged;
        factor.Take(plan.Pattern);
        Array.Clear(factor.Entries);
        Array.Clear(factor.Right);
        foreach (int i in plan.Conductors)
        {
            int a = plan.Slot[circuit.ConductorA[i]];
            int b = plan.Slot[circuit.ConductorB[i]];
            if (a == b)
                continue;
            factor.Entries[plan.Pattern.EntryOf(a, b)]++;
        }

        for (int i = 0; i < circuit.ConductorCount; i++)
        {
            if (solver.LinkOf(i) == Link.Finite)
                Carry(circuit.ConductorA[i], circuit.ConductorB[i], solver.ConductorAmperes(i));
        }

        for (int i = 0; i < circuit.LoadCount; i++)
            Carry(circuit.LoadFeed[i], circuit.LoadReturn[i], solver.LoadAmperes(i));
        Carry(circuit.Minus, circuit.Plus, solver.SourceAmperes);
        if (!factor.Solve())
            throw new InvalidOperationException("Merged nodes must be connected.");
        factor.Right[plan.Pattern.Size] = 0;

        void Carry(int from, int to, double amperes)
        {
            factor.Right[merged.Slot[from]] -= amperes;
            factor.Right[merged.Slot[to]] += amperes;
        }
    }

    /// <summary>Current of a merged conductor at the last update.</summary>
    public double Amperes(int conductor) =>
        plan is null
            ? throw new InvalidOperationException("The currents must be updated first.")
            : factor.Right[plan.Slot[circuit.ConductorA[conductor]]]
                - factor.Right[plan.Slot[circuit.ConductorB[conductor]]];
}
