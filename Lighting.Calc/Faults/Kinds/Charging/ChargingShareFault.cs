using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A fault of the charging system whose severity is a share: of the current, the magnets' voltage or the held
/// voltage.</summary>
internal abstract class ChargingShareFault(
    FaultCircuit circuit,
    FaultKind kind,
    string prior,
    ImmutableArray<double> shares
) : ShareFault(circuit, kind, prior, shares)
{
    // A battery that is flat or boils over is noticed.
    public override double LeastNoticed => 0.5;

    public override Fault At(FaultCase severity, FittedResistance? fitted) =>
        new(this) { Share = UnitsNet.Ratio.FromDecimalFractions(severity.Factor) };

    protected static string Percent(Fault fault) => FaultWords.Percent(fault.Share!.Value.DecimalFractions);
}
