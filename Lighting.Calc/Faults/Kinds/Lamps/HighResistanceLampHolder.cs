namespace Lighting.Calc;

/// <summary>A lamp holder of high resistance, or without its earth: its lamps then feed back through each
/// other.</summary>
internal sealed class HighResistanceLampHolder(FaultCircuit circuit, int holder)
    : ResistanceFault(
        circuit,
        FaultKind.HighResistanceLampHolder,
        holder,
        circuit.Options.Weight("high-resistance lamp holder"),
        circuit.Options.Weight("lamp holder open")
    )
{
    public override string PartName => Circuit.Holders[Part].LampsIn(Bike);

    public override string Subject => $"the holder of the {PartName}";

    public override string? Repair => $"Clean {Subject}, its contacts and its earth, or renew it.";

    protected override string Open => Circuit.Holders[Part].Lamps.Length > 1 ? "without its earth" : "without contact";

    public override bool IsOf(MeasuredPart part) => part.Holder == Part;

    public override void PutIn(FaultyHarness harness, FaultCase severity) => harness.HolderOhms[Part] += severity.Ohms;
}
