namespace Lighting.Calc;

/// <summary>An LED with its two wires exchanged.</summary>
internal sealed class LedReversed(FaultCircuit circuit, int lamp)
    : LampFault(
        circuit,
        FaultKind.LedReversed,
        lamp,
        circuit.Options.Weight("led reversed") * circuit.Bike.Lamps[lamp].Quantity,
        OneSeverity
    )
{
    public override string? Repair => $"Exchange the two wires of the {PartName}, or turn it round.";

    public override void PutIn(FaultyHarness harness, FaultCase severity) => harness.Lamps[Part].IsReversed = true;

    protected override string State(Fault fault) => "reversed (wires exchanged)";
}
