using System.Collections.Immutable;

namespace Lighting.Calc.FaultFinding;

/// <summary>One fault of one part in all its severities.</summary>
/// <param name="Kind">The fault.</param>
/// <param name="Part">Index of the part in its list of the bike: run, contact, fuse, lamp or point.</param>
/// <param name="Prior">Prior probability.</param>
/// <param name="Cases">Its severities, mildest first.</param>
internal sealed record FaultFamily(FaultKind Kind, int Part, double Prior, ImmutableArray<FaultCase> Cases)
{
    /// <summary>Whether what lies between two neighbouring severities is to be reckoned with as well.</summary>
    public bool IsContinuous => Kind is FaultKind.PoorJoint or FaultKind.PoorGround or FaultKind.PoorContact or FaultKind.PoorFuseHolder or FaultKind.BatteryWeak or FaultKind.BatteryFlat or FaultKind.CoilWeak or FaultKind.PoorCoil;

    /// <summary>Whether its severity is a share of the supply's volts, not a resistance.</summary>
    public bool IsShare => Kind is FaultKind.BatteryFlat or FaultKind.CoilWeak;
}
