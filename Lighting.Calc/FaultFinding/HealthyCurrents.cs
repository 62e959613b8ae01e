using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.FaultFinding;

/// <summary>The largest current that each part carries on a bike in order, over the settings it is tested in; amperes.</summary>
internal sealed class HealthyCurrents
{
    private HealthyCurrents(FaultCircuit circuit)
    {
        Runs = new double[circuit.Runs.Length];
        Contacts = new double[circuit.Contacts.Length];
        Fuses = new double[circuit.Fuses.Length];
    }

    public double[] Runs { get; }

    public double[] Contacts { get; }

    public double[] Fuses { get; }

    /// <summary>Of the battery or the lighting coil.</summary>
    public double Source { get; private set; }

    public static HealthyCurrents Of(FaultCircuit circuit, ToleranceDraws draws, IEnumerable<Setting> settings)
    {
        var currents = new HealthyCurrents(circuit);
        var solver = new FaultSolver(circuit, draws);
        foreach (Setting setting in settings)
        {
            solver.Set(setting, new FaultMember(FaultCatalog.Nothing(1), FaultCatalog.Nothing(1).Cases[0]));
            solver.Solve();
            Take(currents.Runs, circuit.Runs, solver);
            Take(currents.Contacts, circuit.Contacts, solver);
            Take(currents.Fuses, circuit.Fuses, solver);
            currents.Source = Math.Max(currents.Source, Math.Abs(solver.Circuit.SourceAmperes));
        }

        return currents;
    }

    private static void Take(double[] most, ImmutableArray<int> conductors, FaultSolver solver)
    {
        for (int i = 0; i < most.Length; i++)
            most[i] = Math.Max(most[i], Math.Abs(solver.Circuit.ConductorAmperes(conductors[i])));
    }
}
