using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A fault of the lamps on one pair of points.</summary>
internal abstract class LampFault(
    FaultCircuit circuit,
    FaultKind kind,
    int lamp,
    double weight,
    ImmutableArray<FaultCase> cases
) : FaultFamily(circuit, kind, lamp, weight, cases)
{
    public override string PartName => Lamp.Lamp;

    public override string Subject => $"the {PartName}";

    protected FittedLamp Lamp => Bike.Lamps[Part];
}
