namespace Lighting.Calc;

/// <summary>A winding of the generator that touches the frame: it gives nothing through its rectifier.</summary>
internal sealed class WindingEarthed(FaultCircuit circuit)
    : ChargingShareFault(circuit, FaultKind.WindingEarthed, "generator winding earthed", [0])
{
    public override string PartName => "generator winding";

    public override string Subject => "the winding of the generator";

    public override string? Repair =>
        "Engine off, unplug the generator: the resistance from each of its leads to the frame is open on a sound one. "
        + "Find where a lead is chafed, or have the winding renewed.";

    public override void PutIn(FaultyHarness harness, FaultCase severity)
    {
        harness.OutputShare = 0;
        harness.IsWindingEarthed = true;
    }

    public override string Title(Fault fault) => $"{Subject}: touches the frame";

    protected override string State(Fault fault) => "touches the frame";
}
