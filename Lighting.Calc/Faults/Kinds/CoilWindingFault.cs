namespace Lighting.Calc;

/// <summary>A lighting coil with a winding or lead of high resistance, or open.</summary>
internal sealed class CoilWindingFault(FaultCircuit circuit, double amperes)
    : ResistanceFault(circuit, FaultKind.CoilWindingFault, 0, circuit.Options.Weight("coil joint poor"), circuit.Options.Weight("coil open"), amperes)
{
    public override string PartName => "lighting coil";

    public override string Subject => "the inside of the lighting coil";

    public override string Code => "PoorCoil";

    public override void PutIn(FaultyHarness harness, FaultCase severity) => harness.SourceOhms += severity.Ohms;
}
