namespace Lighting.Calc;

/// <summary>A lighting coil of low voltage: weak magnets or shorted turns.</summary>
internal sealed class LowCoilOutput(FaultCircuit circuit)
    : LowVoltageFault(
        circuit,
        FaultKind.LowCoilOutput,
        "low coil output",
        [0.88, 0.8, 0.72, 0.64, 0.56, 0.48, 0.4, 0.3, 0.2]
    )
{
    public override string PartName => "lighting coil";

    public override string Subject => "the lighting coil";

    public override string? Repair =>
        "Test the lighting coil and the magnets against the list; renew the coil or have the rotor remagnetised.";

    public override string Title(Fault fault) => $"{Subject}: low output";

    protected override string State(Fault fault) =>
        $"low output, {base.State(fault)} at {FaultWords.Rpm(Circuit.Supply.Rpm)}";
}
