namespace Lighting.Calc;

/// <summary>A switch contact that never opens.</summary>
internal sealed class ContactNeverOpens(FaultCircuit circuit, int contact)
    : FaultFamily(
        circuit,
        FaultKind.ContactNeverOpens,
        contact,
        circuit.Options.Weight("contact never opens"),
        OneSeverity
    )
{
    public override string PartName => Bike.Switches[Part].Name;

    public override string Subject => $"the contact of {PartName}";

    public override string? Repair => $"Free the contact of {PartName}, or renew the switch.";

    public override void PutIn(FaultyHarness harness, FaultCase severity) =>
        harness.IsOpen[Circuit.Contacts[Part]] = false;

    protected override string State(Fault fault) => "never opens";
}
