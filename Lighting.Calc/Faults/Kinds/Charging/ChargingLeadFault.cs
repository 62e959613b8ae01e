namespace Lighting.Calc;

/// <summary>The lead from generator or regulator to the battery: its plug, its joints and the charge fuse in it, of
/// high resistance or open.</summary>
internal sealed class ChargingLeadFault(FaultCircuit circuit)
    : ResistanceFault(
        circuit,
        FaultKind.ChargingLeadFault,
        0,
        circuit.Options.Weight("high-resistance charging lead"),
        circuit.Options.Weight("charging lead open")
    )
{
    public override double LeastNoticed => 0.5;

    public override string PartName => "charging lead";

    public override string Subject => "the lead from generator or regulator to the battery, its plug or charge fuse";

    public override string? Repair =>
        "Check the charge fuse, if there is one; clean the plug and joints between generator, rectifier, regulator and "
        + "battery, feed and return. Measure from the output of the regulator to battery +, and from its body to "
        + "battery -, engine running: more than 0.5 V is the fault.";

    public override void PutIn(FaultyHarness harness, FaultCase severity) =>
        harness.ChargingLeadOhms += severity.Ohms;
}
