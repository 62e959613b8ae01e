namespace Lighting.Calc;

/// <summary>Two wires exchanged where they are joined.</summary>
internal sealed class CrossedWires(FaultCircuit circuit, int crossing)
    : FaultFamily(circuit, FaultKind.CrossedWires, crossing, circuit.Options.Weight("wires crossed"), OneSeverity)
{
    public override string PartName => $"{First.Name} and {Second.Name}";

    public override string Subject => $"the wires '{First.Name}' and '{Second.Name}'";

    public override string? Repair => $"Exchange the wires '{First.Name}' and '{Second.Name}' at one of their ends.";

    private Run First => Bike.Runs[Circuit.Crossings[Part].First];

    private Run Second => Bike.Runs[Circuit.Crossings[Part].Second];

    public override void PutIn(FaultyHarness harness, FaultCase severity)
    {
        harness.Crossing = Part;
        harness.IsOpen[Circuit.Runs[Circuit.Crossings[Part].First]] = true;
        harness.IsOpen[Circuit.Runs[Circuit.Crossings[Part].Second]] = true;
    }

    protected override string State(Fault fault) => "exchanged";
}
