using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A fault whose severity is the share that it leaves of a voltage or a current, all shares as
/// likely.</summary>
internal abstract class ShareFault(
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

    public override FaultCase Graver(FaultCase severity, double decades) =>
        severity with
        {
            Factor = severity.Factor < 1 ? severity.Factor * Math.Pow(10, decades / 3) : severity.Factor,
        };
}
