namespace Lighting.Calc;

/// <summary>Two wires of the live side that touch: each then feeds the other's lamps.</summary>
internal sealed class ShortBetweenCircuits(FaultCircuit circuit, int point, int other)
    : FaultFamily(
        circuit,
        FaultKind.ShortBetweenCircuits,
        point,
        circuit.Options.Weight("short between circuits"),
        OneSeverity
    )
{
    public override bool Joins => true;

    public override string PartName => $"{Circuit.Points[Part]} and {Circuit.Points[other]}";

    public override string Subject => $"the wires of '{Circuit.Points[Part]}' and '{Circuit.Points[other]}'";

    public override string? Repair =>
        $"Battery disconnected, find where the wires of {PartName} run together; part and insulate them.";

    public override void PutIn(FaultyHarness harness, FaultCase severity) => harness.Bridge = (Part, other);

    protected override string State(Fault fault) => "touch each other";
}
