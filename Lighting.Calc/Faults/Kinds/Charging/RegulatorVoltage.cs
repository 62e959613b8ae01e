namespace Lighting.Calc;

/// <summary>A regulator that holds more than it should (shorted, or its earth or sense wire open), or less.</summary>
internal sealed class RegulatorVoltage(FaultCircuit circuit, bool isHigh)
    : ChargingShareFault(
        circuit,
        isHigh ? FaultKind.RegulatorVoltageHigh : FaultKind.RegulatorVoltageLow,
        isHigh ? "regulator voltage high" : "regulator voltage low",
        isHigh ? [1.06, 1.09, 1.12, 1.16, 1.2, 1.25, 1.31, TestSupply.MostHeld] : [0.97, 0.955, 0.94, 0.93, 0.92]
    )
{
    public override string PartName => "regulator";

    public override string Subject => "the regulator";

    public override string? Repair =>
        isHigh
            ? "Clean the earth of the regulator and its sense wire, and measure from its body to battery -, engine "
                + "running: 0.5 V or less. If it still overcharges, renew the regulator. Check the level of the "
                + "battery's acid, and lamps that have had too much voltage."
            : "Measure the drop from generator to battery; where it is small, set or renew the regulator.";

    public override void PutIn(FaultyHarness harness, FaultCase severity) => harness.HeldShare *= severity.Factor;

    public override string Title(Fault fault) =>
        isHigh ? $"{Subject} overcharges: shorted, or its earth or sense wire open" : $"{Subject} holds too little";

    protected override string State(Fault fault) => $"holds {FaultWords.Volts(Held(fault))}, "
        + (isHigh ? "overcharging: shorted, or its earth or sense wire open" : "too little");

    private double Held(Fault fault) =>
        fault.Share!.Value.DecimalFractions * Circuit.SupplyAt(Circuit.ChargingTestRpm).OpenVolts;
}
