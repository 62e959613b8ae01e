using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A fault of the charging system whose severity is a share: of the current, the magnets' voltage or the held
/// voltage.</summary>
internal abstract class ChargingShareFault(
    FaultCircuit circuit,
    FaultKind kind,
    string prior,
    ImmutableArray<double> shares
)
    : FaultFamily(
        circuit,
        kind,
        0,
        circuit.Options.Weight(prior),
        [.. shares.Select(s => new FaultCase(0, 1.0 / shares.Length, s))]
    )
{
    public override bool IsContinuous => Cases.Length > 1;

    public override bool IsShare => true;

    // A battery that is flat or boils over is noticed.
    public override double LeastNoticed => 0.5;

    public override FaultCase Graver(FaultCase severity, double decades) =>
        severity with
        {
            Factor = severity.Factor < 1 ? severity.Factor * Math.Pow(10, decades / 3) : severity.Factor,
        };

    public override Fault At(FaultCase severity, FittedResistance? fitted) =>
        new(this) { Share = UnitsNet.Ratio.FromDecimalFractions(severity.Factor) };

    protected static string Percent(Fault fault) => FaultWords.Percent(fault.Share!.Value.DecimalFractions);
}
