namespace Lighting.Calc;

/// <summary>A phase of the generator's winding, or its lead, that is open: part of the output is missing, of a
/// single-phase winding all of it.</summary>
/// <remarks>Of a lossless three-phase winding behind its reactance two phases give 1/√3 of the current (derived: the
/// voltage √3 times, the reactance twice, the rectified mean 2/3). The severities lie about it, for each
/// lead.</remarks>
internal sealed class PhaseOpen(FaultCircuit circuit)
    : FaultFamily(
        circuit,
        FaultKind.PhaseOpen,
        0,
        circuit.Options.Weight("generator phase open"),
        [
            .. Enumerable
                .Range(1, BenchPoints.MostLeads)
                .SelectMany(lead =>
                    s_shares.Select(s => new FaultCase(
                        0,
                        1.0 / (BenchPoints.MostLeads * s_shares.Length),
                        s,
                        Lead: lead
                    ))
                ),
        ]
    )
{
    private static readonly double[] s_shares = [0.67, 0.58, 0.5, 0.42, 0];

    public override bool IsShare => true;

    public override double LeastNoticed => 0.5;

    public override string PartName => "generator phases";

    public override string Subject => "the phases of the generator";

    public override string? Repair =>
        "Engine off, unplug the generator: the resistance from one of its leads to the others is open. Repair the lead "
        + "and its plug, or have the winding renewed.";

    public override void PutIn(FaultyHarness harness, FaultCase severity)
    {
        harness.OutputShare *= severity.Factor;
        harness.OpenLead = severity.Lead;
    }

    public override Fault At(FaultCase severity, FittedResistance? fitted) =>
        new(this) { Share = UnitsNet.Ratio.FromDecimalFractions(severity.Factor) };

    public override string Title(Fault fault) => $"{Subject}: one open";

    protected override string State(Fault fault) =>
        $"one open, about {FaultWords.Percent(fault.Share!.Value.DecimalFractions)} of the output left";
}
