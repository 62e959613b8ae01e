namespace Lighting.Calc;

/// <summary>A fuse holder of high resistance.</summary>
/// <param name="circuit">The bike's circuit.</param>
/// <param name="fuse">Index of the fuse.</param>
/// <param name="isBypassed">Whether an ammeter in the fuse's place has its clips past the poor contact, so that it
/// shows the current of a good holder.</param>
internal sealed class HighResistanceFuseHolder(FaultCircuit circuit, int fuse, bool isBypassed)
    : ResistanceFault(
        circuit,
        FaultKind.HighResistanceFuseHolder,
        fuse,
        circuit.Options.Weight("high-resistance fuse holder") / 2,
        open: 0
    )
{
    public override string PartName => Bike.Fuses[Part].Name;

    public override string Subject => $"the holder of the fuse '{PartName}'";

    public override string? Repair =>
        $"Clean and tighten the clips of the holder of '{PartName}', or renew the holder.";

    public override bool IsOf(MeasuredPart part) => part.Conductor == Circuit.Fuses[Part];

    public override void PutIn(FaultyHarness harness, FaultCase severity)
    {
        harness.AddedOhms[Circuit.Fuses[Part]] += severity.Ohms;
        if (isBypassed)
            harness.BypassedHolder = Part;
    }
}
