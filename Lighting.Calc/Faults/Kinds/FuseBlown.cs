namespace Lighting.Calc;

/// <summary>A blown fuse, and nothing else.</summary>
internal sealed class FuseBlown(FaultCircuit circuit, int fuse)
    : FaultFamily(circuit, FaultKind.FuseBlown, fuse, circuit.Options.Weight("fuse blown"), OneSeverity)
{
    public override string PartName => Bike.Fuses[Part].Name;

    public override string Subject => $"the fuse '{PartName}'";

    public override string? Repair =>
        $"Fit a new fuse of the same rating in '{PartName}'; if it blows as well, find the short before the next one.";

    public override string? Consequence => $"The fuse '{PartName}' has blown";

    public override void PutIn(FaultyHarness harness, FaultCase severity) => harness.IsOpen[Circuit.Fuses[Part]] = true;

    protected override string State(Fault fault) => "blown";
}
