namespace Lighting.Calc;

/// <summary>Something that the catalogue lacks: some readings are as on a healthy bike, others anything.</summary>
internal sealed class NotListed(FaultCircuit circuit)
    : FaultFamily(
        circuit,
        FaultKind.NotListed,
        0,
        circuit.Options.Weight("not listed") * circuit.Bike.Runs.Length,
        OneSeverity
    )
{
    /// <summary>Share of the readings that it changes.</summary>
    public const double Changed = 0.4;

    public override bool IsBroad => true;

    public override double LeastNoticed => 1;

    public override string PartName => "";

    public override string Subject => "something that is not listed";

    public override void PutIn(FaultyHarness harness, FaultCase severity) { }

    public override string Sentence(Fault fault) => Title(fault);

    public override string Title(Fault fault) =>
        "a fault that is not listed: two or more at once, or wiring that differs from the lists";

    protected override string State(Fault fault) => "";
}
