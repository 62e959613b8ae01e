namespace Lighting.Calc;

/// <summary>A rectifier or regulator that gives nothing, or a dynamo.</summary>
internal sealed class NoGeneratorOutput(FaultCircuit circuit)
    : ChargingShareFault(circuit, FaultKind.NoGeneratorOutput, "no generator output", [0])
{
    public override string PartName => "rectifier or regulator";

    public override string Subject => "the rectifier or regulator";

    public override string? Repair =>
        "Engine off, unplug the generator: the resistance between each pair of its leads is equal, from each to the "
        + "frame open. Then its AC voltage between each pair, engine running, unplugged: equal, and as listed. If it "
        + "is right, renew the rectifier or the regulator: a shorted diode, or a regulator that never lets go. On a "
        + "dynamo test brushes, field and cut-out.";

    public override void PutIn(FaultyHarness harness, FaultCase severity) => harness.OutputShare = 0;

    public override string Title(Fault fault) => $"{Subject}: no output";

    protected override string State(Fault fault) =>
        "no output: a diode shorted, or the regulator shut; of a dynamo brushes, field or cut-out";
}
