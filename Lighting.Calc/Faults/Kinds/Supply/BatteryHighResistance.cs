namespace Lighting.Calc;

/// <summary>A battery of high internal resistance: its voltage falls under load.</summary>
internal sealed class BatteryHighResistance(FaultCircuit circuit)
    : ResistanceFault(
        circuit,
        FaultKind.BatteryHighResistance,
        0,
        circuit.Options.Weight("high-resistance battery"),
        [.. s_ohms.Select(r => new FaultCase(r, 1.0 / s_ohms.Length))]
    )
{
    private static readonly double[] s_ohms =
    [
        .. Enumerable.Range(0, 11).Select(k => 0.05 * Math.Pow(2, 0.5 * k)),
        .. Enumerable.Range(0, 10).Select(k => 1.9 * Math.Pow(10, 0.06 * k)),
    ];

    public override string PartName => "battery";

    public override string Subject => "the battery";

    public override string? Repair =>
        "Clean and tighten the battery terminals; then test the battery under load: a sulphated one is renewed.";

    public override void PutIn(FaultyHarness harness, FaultCase severity) => harness.SourceOhms += severity.Ohms;

    public override string Title(Fault fault) => $"{Subject}: high internal resistance";

    protected override string State(Fault fault) => $"high internal resistance, {base.State(fault)} added";
}
