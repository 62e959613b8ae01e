namespace Lighting.Calc;

/// <summary>A diode of the rectifier that is open: part of the output is missing.</summary>
/// <remarks>With an open diode a single-phase bridge gives one half-wave of two, a three-phase one more. The severities
/// lie about that.</remarks>
internal sealed class DiodeOpen(FaultCircuit circuit)
    : ChargingShareFault(circuit, FaultKind.DiodeOpen, "diode open", [0.75, 0.67, 0.58, 0.5, 0.42, 0.33])
{
    public override string PartName => "rectifier";

    public override string Subject => "the rectifier";

    public override string? Repair =>
        "Engine off, unplug the generator: the resistance between each pair of its leads is equal, from each to the "
        + "frame open; its AC voltage between each pair, engine running, equal, and as listed. Then test the diodes of "
        + "the rectifier, each way, and renew it.";

    public override void PutIn(FaultyHarness harness, FaultCase severity) => harness.OutputShare *= severity.Factor;

    public override string Title(Fault fault) => $"{Subject}: a diode open";

    protected override string State(Fault fault) =>
        $"a diode open, about {Percent(fault)} of the output left";
}
