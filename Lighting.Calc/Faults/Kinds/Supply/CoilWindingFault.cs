namespace Lighting.Calc;

/// <summary>A lighting coil with a winding or lead of high resistance, or open.</summary>
internal sealed class CoilWindingFault(FaultCircuit circuit)
    : ResistanceFault(
        circuit,
        FaultKind.CoilWindingFault,
        0,
        circuit.Options.Weight("high-resistance coil winding"),
        circuit.Options.Weight("coil winding open")
    )
{
    public override string PartName => "lighting coil";

    public override string Subject => "the winding of the lighting coil";

    public override string? Repair => "Clean the coil's lead and earthed end; then renew the coil.";

    public override void PutIn(FaultyHarness harness, FaultCase severity) => harness.SourceOhms += severity.Ohms;
}
