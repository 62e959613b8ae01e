using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A wire of the live side that leaks to the frame without blowing its fuse: a partial short, or where it is
/// always live a drain on the battery.</summary>
internal sealed class LeakToFrame(FaultCircuit circuit, int point)
    : FaultFamily(
        circuit,
        FaultKind.LeakToFrame,
        point,
        circuit.Options.Weight("leak to frame"),
        Severities(circuit, point)
    )
{
    private const double SeldomNoticed = 0.3;

    // Amperes that a lead without a fuse bears: common practice, no source.
    private const double MostUnfused = 10;
    private static readonly double[] s_ohms = [10_000, 3200, 1000, 320, 100, 56, 32, 18, 10, 5.6, 3.2];

    public override bool IsContinuous => true;

    public override bool IsResistance => true;

    public override bool Joins => true;

    // A drain is noticed by the flat battery it leaves.
    public override double LeastNoticed => IsDrain ? SeldomNoticed : base.LeastNoticed;

    public override string PartName => Circuit.Points[Part];

    public override string Subject => $"'{PartName}' or the wires joined to it";

    public override string? Repair =>
        $"Battery disconnected, find what touches or is damp at '{PartName}' and the wires joined to it; insulate or "
        + $"renew it.";

    private bool IsDrain => Circuit.Supply.Coil is null && Circuit.Sides.IsAlwaysLive(Part);

    public override void PutIn(FaultyHarness harness, FaultCase severity) =>
        harness.ToFrameOhms[Part] = Math.Min(harness.ToFrameOhms[Part], severity.Ohms);

    public override FaultCase Graver(FaultCase severity, double decades) =>
        severity with
        {
            Ohms = severity.Ohms / Math.Pow(10, decades),
        };

    public override Fault At(FaultCase severity, FittedResistance? fitted) => new(this) { Resistance = fitted };

    public override string Title(Fault fault) => $"{Subject}: {Name}";

    protected override string State(Fault fault) =>
        fault.Resistance is { } fitted ? $"{Name}, {FaultWords.Fitted(fitted)}" : Name;

    private string Name =>
        IsDrain ? "leakage to the frame, which drains the battery" : "leakage to the frame (partial short)";

    // What would blow the fuse before it, or burn the wire of a battery without one, is a short.
    private static ImmutableArray<FaultCase> Severities(FaultCircuit circuit, int point)
    {
        double most =
            circuit.FuseBefore[point] is >= 0 and var fuse ? circuit.Bike.Fuses[fuse].Rating.Amperes
            : circuit.Supply.Coil is not null ? double.PositiveInfinity
            : MostUnfused;
        double[] ohms = [.. s_ohms.Where(r => circuit.Supply.OpenVolts / r < most)];
        return [.. ohms.Select(r => new FaultCase(r, 1.0 / ohms.Length))];
    }
}
