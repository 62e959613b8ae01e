namespace Lighting.Calc;

/// <summary>A point on the live side that touches the frame; a fuse before it that can blow has blown.</summary>
/// <remarks>A short of a battery before any fuse is no family: it burns its wire and needs no meter.</remarks>
internal sealed class ShortToFrame(FaultCircuit circuit, int point)
    : FaultFamily(circuit, FaultKind.ShortToFrame, point, circuit.Options.Weight("short to frame"), OneSeverity)
{
    public override string PartName => Circuit.Points[Part];

    public override string Subject => $"'{PartName}'";

    public static bool CanBe(FaultCircuit circuit, int point) =>
        circuit.Sides.IsLive(circuit.Points[point]) && (circuit.FuseBefore[point] >= 0 || circuit.Supply.Coil is not null);

    public override void PutIn(FaultyHarness harness, FaultCase severity) => harness.Short(Part);

    protected override string State(Fault fault) => Circuit.FuseBefore[Part] is >= 0 and var fuse
        ? $"touches the frame and has blown the fuse '{Bike.Fuses[fuse].Name}'"
        : "touches the frame and takes the coil's current";
}
