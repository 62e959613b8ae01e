namespace Lighting.Calc;

/// <summary>Magnets that have lost strength: the generator gives at each speed what it gave at a slower one.</summary>
internal sealed class WeakMagnets(FaultCircuit circuit)
    : ChargingShareFault(circuit, FaultKind.WeakMagnets, "weak magnets", [0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3])
{
    public override string PartName => "generator magnets";

    public override string Subject => "the magnets of the generator";

    public override string? Repair =>
        "Measure the AC voltage between each pair of the generator's leads, engine running, unplugged: equal, but "
        + "below the list. Renew the rotor, or have it remagnetised.";

    public override void PutIn(FaultyHarness harness, FaultCase severity) => harness.MagnetShare *= severity.Factor;

    public override string Title(Fault fault) => $"{Subject} weak";

    protected override string State(Fault fault) => $"weak, about {Percent(fault)} of their strength left";
}
