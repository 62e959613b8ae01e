namespace Lighting.Calc;

/// <summary>A run with a joint of high resistance, or open; on the earth side of the lamps a high-resistance or missing
/// earth.</summary>
internal sealed class HighResistanceRun(FaultCircuit circuit, int run)
    : ResistanceFault(
        circuit,
        circuit.Sides.IsEarth(run) ? FaultKind.HighResistanceEarth : FaultKind.HighResistanceJoint,
        run,
        circuit.Options.Weight(circuit.Sides.IsEarth(run) ? "high-resistance earth" : "high-resistance joint")
            * Math.Max(1, circuit.Bike.Runs[run].Joints),
        circuit.Options.Weight(circuit.Sides.IsEarth(run) ? "earth open" : "joint open")
    )
{
    public override string PartName => Run.Name;

    public override string Subject =>
        $"{(IsEarth ? "the earth" : "the wire or a joint of")} '{Run.Name}' ({Run.From} to {Run.To})";

    public override string? Repair =>
        IsEarth
            ? $"Clean and tighten the earth '{Run.Name}' and its joints at '{Run.From}' and '{Run.To}', or renew it."
            : $"Clean and tighten the joints of '{Run.Name}' at '{Run.From}' and '{Run.To}', or renew the wire.";

    private Run Run => Bike.Runs[Part];

    private bool IsEarth => Kind == FaultKind.HighResistanceEarth;

    public override bool IsOf(MeasuredPart part) => part.Conductor == Circuit.Runs[Part];

    public override void PutIn(FaultyHarness harness, FaultCase severity) =>
        harness.AddedOhms[Circuit.Runs[Part]] += severity.Ohms;
}
