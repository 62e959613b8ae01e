namespace Lighting.Calc;

/// <summary>A fuse holder of high resistance.</summary>
internal sealed class HighResistanceFuseHolder(FaultCircuit circuit, int fuse, double amperes)
    : ResistanceFault(
        circuit,
        FaultKind.HighResistanceFuseHolder,
        fuse,
        circuit.Options.Weight("high-resistance fuse holder"),
        open: 0,
        amperes
    )
{
    public override string PartName => Bike.Fuses[Part].Name;

    public override string Subject => $"the holder of the fuse '{PartName}'";

    public override void PutIn(FaultyHarness harness, FaultCase severity) =>
        harness.AddedOhms[Circuit.Fuses[Part]] += severity.Ohms;
}
