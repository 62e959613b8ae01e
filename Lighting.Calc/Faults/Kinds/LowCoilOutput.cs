namespace Lighting.Calc;

/// <summary>A lighting coil of too low a voltage, magnets or turns failing.</summary>
internal sealed class LowCoilOutput(FaultCircuit circuit)
    : LowVoltageFault(circuit, FaultKind.LowCoilOutput, "coil weak", [0.88, 0.8, 0.72, 0.64, 0.56, 0.48, 0.4, 0.3, 0.2])
{
    public override string PartName => "lighting coil";

    public override string Subject => "the lighting coil";

    public override string Code => "CoilWeak";

    public override string Title(Fault fault) => $"{Subject} weak";

    protected override string State(Fault fault) => $"weak, {base.State(fault)} at {FaultWords.Rpm(Circuit.Supply.Rpm)}";
}
