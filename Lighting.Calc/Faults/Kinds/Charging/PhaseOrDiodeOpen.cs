namespace Lighting.Calc;

/// <summary>A phase of the generator or a diode of the rectifier that is open: part of the output is missing.</summary>
/// <remarks>Of a lossless three-phase winding behind its reactance two phases give 1/√3 of the current (derived: the
/// voltage √3 times, the reactance twice, the rectified mean 2/3); with an open diode a single-phase bridge gives one
/// half-wave of two. The severities lie about these.</remarks>
internal sealed class PhaseOrDiodeOpen(FaultCircuit circuit)
    : ChargingShareFault(
        circuit,
        FaultKind.PhaseOrDiodeOpen,
        "phase or diode open",
        [0.75, 0.67, 0.58, 0.5, 0.42, 0.33]
    )
{
    public override string PartName => "generator or rectifier";

    public override string Subject => "the generator or rectifier";

    public override string? Repair =>
        "Engine off, unplug the generator: the resistance between each pair of its leads is equal, from each to the "
        + "frame open. Then its AC voltage between each pair, engine running, unplugged: equal, and as listed. If both "
        + "are right, test the diodes of the rectifier, each way.";

    public override void PutIn(FaultyHarness harness, FaultCase severity) => harness.OutputShare *= severity.Factor;

    public override string Title(Fault fault) => $"{Subject}: a phase or a diode open";

    protected override string State(Fault fault) =>
        $"a phase or a diode open or shorted, about {Percent(fault)} of the output left";
}
