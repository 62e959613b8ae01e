namespace Lighting.Calc;

/// <summary>A battery of low voltage even without load.</summary>
internal sealed class BatteryFlat(FaultCircuit circuit)
    : LowVoltageFault(
        circuit,
        FaultKind.BatteryFlat,
        "battery flat",
        [0.95, 0.92, 0.88, 0.83, 0.77, 0.7, 0.6, 0.45, 0.3]
    )
{
    public override string PartName => "battery";

    public override string Subject => "the battery";

    public override string? Repair => "Charge the battery; if it does not hold, renew it.";

    public override string Title(Fault fault) => $"{Subject} flat";

    protected override string State(Fault fault) => $"flat, {base.State(fault)}";
}
