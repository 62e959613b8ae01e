using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A supply of low voltage even without load.</summary>
internal abstract class LowVoltageFault(
    FaultCircuit circuit,
    FaultKind kind,
    string prior,
    ImmutableArray<double> shares
) : ShareFault(circuit, kind, prior, shares)
{
    public override void PutIn(FaultyHarness harness, FaultCase severity) => harness.VoltageShare *= severity.Factor;

    public override Fault At(FaultCase severity, FittedResistance? fitted) =>
        new(this) { OpenVoltage = ElectricPotential.FromVolts(SoundVolts * severity.Factor) };

    // Of the battery by itself, also while the engine runs.
    private double SoundVolts =>
        Circuit.Supply.Running is null ? Circuit.Supply.OpenVolts : Bike.BatteryVoltage.Volts;

    protected override string State(Fault fault) => $"{FaultWords.Volts(fault.OpenVoltage!.Value.Volts)} without load";
}
