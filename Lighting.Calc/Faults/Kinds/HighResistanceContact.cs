namespace Lighting.Calc;

/// <summary>A switch contact of high resistance, or that never closes.</summary>
internal sealed class HighResistanceContact(FaultCircuit circuit, int contact)
    : ResistanceFault(
        circuit,
        FaultKind.HighResistanceContact,
        contact,
        circuit.Options.Weight("high-resistance contact"),
        circuit.Options.Weight("contact never closes")
    )
{
    public override string PartName => Bike.Switches[Part].Name;

    public override string Subject => $"the contact of {PartName}";

    public override string? Repair => $"Clean the contact of {PartName}, or renew the switch.";

    protected override string Open => "never closes";

    public override bool IsOf(MeasuredPart part) => part.Contact == Part;

    public override void PutIn(FaultyHarness harness, FaultCase severity) =>
        harness.AddedOhms[Circuit.Contacts[Part]] += severity.Ohms;
}
