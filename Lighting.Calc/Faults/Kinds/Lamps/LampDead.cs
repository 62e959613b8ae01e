namespace Lighting.Calc;

/// <summary>A lamp that is open; of several on the same two points, one or all.</summary>
internal sealed class LampDead(FaultCircuit circuit, int lamp)
    : LampFault(
        circuit,
        FaultKind.LampDead,
        lamp,
        circuit.Options.Weight("lamp dead") * circuit.Bike.Lamps[lamp].Quantity,
        circuit.Bike.Lamps[lamp].Quantity == 1
            ? OneSeverity
            : [new FaultCase(0, 0.8), new FaultCase(0, 0.2, circuit.Bike.Lamps[lamp].Quantity)]
    )
{
    public override string? Repair => $"Renew the {PartName}; clean its holder.";

    public override void PutIn(FaultyHarness harness, FaultCase severity) =>
        harness.Lamps[Part].Dead = (int)severity.Factor;

    public override Fault At(FaultCase severity, FittedResistance? fitted) =>
        new(this) { DeadLamps = (int)severity.Factor };

    public override string Title(Fault fault) => $"{Subject} dead";

    protected override string State(Fault fault) =>
        Lamp.Quantity == 1 ? "dead" : $"{fault.DeadLamps} of {Lamp.Quantity} dead";
}
