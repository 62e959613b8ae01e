
namespace Lighting.Calc;

/// <summary>A run with a joint of high resistance, or open; on the earth side of the lamps a poor or missing earth.</summary>
internal sealed class HighResistanceRun(FaultCircuit circuit, int run, double amperes) : ResistanceFault(
    circuit,
    circuit.Sides.IsEarth(run) ? FaultKind.HighResistanceEarth : FaultKind.HighResistanceJoint,
    run,
    circuit.Options.Weight(circuit.Sides.IsEarth(run) ? "ground joint poor" : "joint poor") * Math.Max(1, circuit.Bike.Runs[run].Joints),
    circuit.Options.Weight(circuit.Sides.IsEarth(run) ? "ground open" : "joint open"),
    amperes)
{
    public override string PartName => Run.Name;

    public override string Subject => $"{(IsEarth ? "the ground" : "the wire or a joint of")} '{Run.Name}' ({Run.From} to {Run.To})";

    public override string Code => IsEarth ? "HighResistanceEarth" : "PoorJoint";

    private Run Run => Bike.Runs[Part];

    private bool IsEarth => Kind == FaultKind.HighResistanceEarth;

    public override void PutIn(FaultyHarness harness, FaultCase severity) => harness.AddedOhms[Circuit.Runs[Part]] += severity.Ohms;
}
