namespace Lighting.Calc;

/// <summary>A point on the live side that touches the frame; a fuse before it that can blow has blown.</summary>
/// <remarks>A short of a battery before any fuse is not considered: it burns out its wire.</remarks>
internal sealed class ShortToFrame(FaultCircuit circuit, int point)
    : FaultFamily(circuit, FaultKind.ShortToFrame, point, circuit.Options.Weight("short to frame"), OneSeverity)
{
    public override string PartName => Circuit.Points[Part];

    public override string Subject => $"'{PartName}'";

    public override string? Repair =>
        $"Battery disconnected, free and insulate the wires at '{PartName}'; then fit a new fuse of the same rating.";

    public override string? Consequence =>
        Circuit.FuseBefore[Part] is >= 0 and var fuse ? $"The fuse '{Bike.Fuses[fuse].Name}' has blown" : null;

    public static bool CanBe(FaultCircuit circuit, int point) =>
        circuit.Sides.IsLive(circuit.Points[point])
        && (circuit.FuseBefore[point] >= 0 || circuit.Supply.Coil is not null);

    public override void PutIn(FaultyHarness harness, FaultCase severity) => harness.Short(Part);

    protected override string State(Fault fault) =>
        Circuit.FuseBefore[Part] is >= 0 and var fuse
            ? $"shorted to the frame; it has blown the fuse '{Bike.Fuses[fuse].Name}'"
            : "shorted to the frame, which takes the current of the lighting coil";
}
