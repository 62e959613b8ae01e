namespace Lighting.Calc;

/// <summary>A flasher that does not close: all indicators behind it stay dark.</summary>
/// <remarks>The lists have no flasher: it is in the wire that feeds the contacts of the indicators, which it
/// opens.</remarks>
internal sealed class FlasherDead(FaultCircuit circuit, int run)
    : FaultFamily(circuit, FaultKind.FlasherDead, run, circuit.Options.Weight("flasher dead"), OneSeverity)
{
    public override string PartName => "flasher";

    public override string Subject => $"the flasher (in '{Bike.Runs[Part].Name}')";

    public override string? Repair => "Renew the flasher; its plug and wires first.";

    /// <summary>The wire with the flasher: the last before the contacts that all indicators share; null where there is
    /// none.</summary>
    public static int? RunOf(FaultCircuit circuit)
    {
        Bike bike = circuit.Bike;
        if (bike.Flasher == FlasherKind.None)
            return null;
        int[] indicators =
        [
            .. Enumerable
                .Range(0, bike.Lamps.Length)
                .Where(l => IsIndicator(bike.Lamps[l].Circuit) || IsIndicator(bike.Lamps[l].Lamp)),
        ];
        HarnessGraph graph = circuit.Graph;
        Reached live = graph.From(graph.Live, p => p.Kind == HarnessPartKind.Lamp ? HarnessGraph.NoWay : 1);
        HarnessPart[][] ways =
        [
            .. indicators.Select(l => live.PathTo(graph.Lamps[l].A).ToArray()).Where(w => w.Length > 0),
        ];
        if (ways.Length < 2)
            return null;
        HarnessPart[] shared = [.. ways[0].Where(p => Array.TrueForAll(ways, w => w.Contains(p)))];
        return shared.Length > 0 && shared[^1].Kind == HarnessPartKind.Run ? shared[^1].Index : null;
    }

    public override void PutIn(FaultyHarness harness, FaultCase severity) => harness.IsOpen[Circuit.Runs[Part]] = true;

    protected override string State(Fault fault) => "dead";

    // A telltale shines with them and says so in its name; it is none.
    private static bool IsIndicator(string name) =>
        name.Contains("indicators", StringComparison.OrdinalIgnoreCase)
        || name.Contains("turn signal", StringComparison.OrdinalIgnoreCase)
        || name.Contains("flasher", StringComparison.OrdinalIgnoreCase);
}
