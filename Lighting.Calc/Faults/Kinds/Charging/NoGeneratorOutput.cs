namespace Lighting.Calc;

/// <summary>Generator, rectifier or regulator that give nothing.</summary>
internal sealed class NoGeneratorOutput(FaultCircuit circuit)
    : ChargingShareFault(circuit, FaultKind.NoGeneratorOutput, "no generator output", [0])
{
    public override string PartName => "generator, rectifier or regulator";

    public override string Subject => "the generator, rectifier or regulator";

    public override string? Repair =>
        "Engine off, unplug the generator: the resistance between each pair of its leads is equal, from each to the "
        + "frame open. Then its AC voltage between each pair, engine running, unplugged: equal, and as listed. If it "
        + "is right, renew the rectifier or the regulator: a shorted diode, or a regulator that never lets go. On a "
        + "dynamo test brushes, field and cut-out.";

    public override void PutIn(FaultyHarness harness, FaultCase severity) => harness.OutputShare = 0;

    public override string Title(Fault fault) => $"{Subject}: no output";

    protected override string State(Fault fault) =>
        "no output: winding open or earthed, diode shorted, or regulator shut";
}
