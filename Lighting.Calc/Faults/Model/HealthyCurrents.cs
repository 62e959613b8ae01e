namespace Lighting.Calc;

/// <summary>The largest current that each part carries on a healthy bike, over the settings it is tested in;
/// amperes.</summary>
internal sealed class HealthyCurrents
{
    private HealthyCurrents(FaultCircuit circuit) => Conductors = new double[circuit.Parts.Length];

    /// <summary>Of runs, contacts and fuses, by their conductors.</summary>
    public double[] Conductors { get; }

    /// <summary>Of the battery or the lighting coil.</summary>
    public double Source { get; private set; }

    public static HealthyCurrents Of(FaultCircuit circuit, ToleranceDraws draws, IEnumerable<Setting> settings)
    {
        var currents = new HealthyCurrents(circuit);
        var solver = new FaultSolver(circuit, draws);
        var nothing = new NoFault(circuit);
        foreach (Setting setting in settings)
        {
            solver.Set(setting, new FaultMember(nothing, nothing.Cases[0]));
            solver.Solve();
            foreach (int part in circuit.Parts)
                currents.Conductors[part] = Math.Max(
                    currents.Conductors[part],
                    Math.Abs(solver.Circuit.ConductorAmperes(part))
                );
            currents.Source = Math.Max(currents.Source, Math.Abs(solver.Circuit.SourceAmperes));
        }

        return currents;
    }
}
