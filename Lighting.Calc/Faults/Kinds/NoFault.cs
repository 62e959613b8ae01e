namespace Lighting.Calc;

/// <summary>A healthy bike.</summary>
internal sealed class NoFault(FaultCircuit circuit, double weight = 1)
    : FaultFamily(circuit, FaultKind.None, 0, weight, OneSeverity)
{
    public override double LeastNoticed => 1;

    public override string PartName => "";

    public override string Subject => "nothing";

    public override void PutIn(FaultyHarness harness, FaultCase severity) { }

    public override string Sentence(Fault fault) => Title(fault);

    protected override string State(Fault fault) => "wrong";
}
